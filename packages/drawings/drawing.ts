/**
 * A drawing as a list of shapes, in millimetres of paper or pixels of screen as its maker says.
 * The web shows it as elements, paper gets it as SVG text: one drawing, both places.
 */
export interface Drawing {
  readonly width: number
  readonly height: number
  /** What the drawing shows, for people who cannot see it. */
  readonly says: string
  readonly shapes: readonly Shape[]
}

/** Lines and grounds of the look; the names are classes of look.css. */
export type Paint =
  | 'out'
  | 'thin'
  | 'hair'
  | 'centre'
  | 'ghost'
  | 'dim'
  /** A dimension line with its arrow at the far end only. */
  | 'dim end'
  | 'hotline'
  | 'hothair'
  | 'hotfill'
  | 'steel out'
  | 'steel2 out'
  | 'pack out'
  | 'pack thin'
  | 'pack ghost'
  | 'plain out'
  | 'paperfill out'
  | 'paperfill'
  | 'medium'

export type Shape = PathShape | TextShape

export interface PathShape {
  readonly kind: 'path'
  readonly d: string
  readonly paint: Paint
  /** Worked out, expected or not measured: the outline is dashed. */
  readonly isDashed?: boolean
}

export interface TextShape {
  readonly kind: 'text'
  readonly x: number
  readonly y: number
  readonly says: string
  readonly anchor: 'start' | 'middle' | 'end'
  readonly paint: 'ink' | 'soft' | 'hot'
  readonly isBold: boolean
  /** Letters of a drawing are 13 high; a main dimension more. */
  readonly size: number
  /** Worked out or expected: dashes under the figure. */
  readonly isDashed?: boolean
  /** The ground the lettering is broken out of. */
  readonly on?: 'pack'
}

export type Point = readonly [x: number, y: number]

const LETTERING = 13

export function path(d: string, paint: Paint, isDashed = false): PathShape {
  return { kind: 'path', d, paint, ...(isDashed && { isDashed }) }
}

export function lettering(
  says: string,
  [x, y]: Point,
  options: Partial<Omit<TextShape, 'kind' | 'x' | 'y' | 'says'>> = {},
): TextShape {
  return { kind: 'text', x, y, says, anchor: 'middle', paint: 'ink', isBold: false, size: LETTERING, ...options }
}

/** @example outline([[0, 0], [10, 0], [10, 5]]) // → 'M0 0L10 0L10 5Z' */
export function outline(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${rounded(x)} ${rounded(y)}`).join('L')}Z`
}

/** @example line([0, 0], [10.123456, 0]) // → 'M0 0L10.123 0' */
export function line([x0, y0]: Point, [x1, y1]: Point): string {
  return `M${rounded(x0)} ${rounded(y0)}L${rounded(x1)} ${rounded(y1)}`
}

/** @example rectangle([0, 0], [10, 5]) // → 'M0 0L10 0L10 5L0 5Z' */
export function rectangle([x0, y0]: Point, [x1, y1]: Point): string {
  return outline([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ])
}

/** A thousandth of a millimetre or pixel is enough for any printer. */
function rounded(value: number): number {
  return Math.round(value * 1000) / 1000
}
