import { type Degree, type Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path, type Point, type Shape, type TextShape } from './drawing.ts'

export interface JointsToDraw {
  readonly boxBore: Millimetre
  readonly stemDiameter: Millimetre
  /** Where each ring's joint lies, clockwise from 12 as seen from above; the first ring in comes first. */
  readonly positions: readonly Degree[]
  /** Outer diameter of the packing in the drawing. */
  readonly size: number
}

const MARGIN = 26
const LETTER_OUTSIDE = 14
const LETTER_BESIDE = 10
/** Of a bold figure 13 high, and from line to line. */
const LETTER_WIDTH = 8
const LINE_HEIGHT = 15

/**
 * The set of rings from above with each ring's joint and number. Joints of rings that lie over each other
 * are numbered on one line: `1, 4`.
 *
 * @example jointsDrawing({ boxBore: mm(45), stemDiameter: mm(28), positions: [degrees(0), degrees(120)], size: 100 }).width // → 152
 */
export function jointsDrawing({ boxBore, stemDiameter, positions, size }: JointsToDraw): Drawing {
  const outer = size / 2
  const inner = outer * (stemDiameter / boxBore)
  const together = [...byPosition(positions)].map(([at, rings]) => ({ at, side: sideOf(at), lines: linesOf(rings, sideOf(at)) }))
  const widest = Math.max(
    0,
    ...together.filter(({ side }) => side !== 'middle').flatMap(({ lines }) => lines.map((numbers) => numbers.length)),
  )
  const margin = Math.max(MARGIN, LETTER_BESIDE + widest * LETTER_WIDTH + 2)
  const centre: Point = [margin + outer, MARGIN + outer]
  return {
    width: size + 2 * margin,
    height: size + 2 * MARGIN,
    says: `Joints from above: ${positions.map((at, ring) => `ring ${ring + 1} at ${Math.round(at)} degrees`).join(', ')}`,
    shapes: [
      path(circle(centre, outer, 1) + circle(centre, inner, 0), 'pack out'),
      path(line([centre[0] - outer - 8, centre[1]], [centre[0] + outer + 8, centre[1]]), 'centre'),
      path(line([centre[0], centre[1] - outer - 8], [centre[0], centre[1] + outer + 8]), 'centre'),
      ...together.flatMap((joint) => jointAt(centre, inner, outer, joint)),
    ],
  }
}

interface Joint {
  readonly at: number
  readonly side: TextShape['anchor']
  readonly lines: readonly string[]
}

/** Beside the ring numbers grow away from it; above and below they stand over its middle. */
function sideOf(at: number): TextShape['anchor'] {
  const aside = Math.sin((at * Math.PI) / 180)
  return aside > 0.3 ? 'start' : aside < -0.3 ? 'end' : 'middle'
}

/** Beside the ring there is little width and much height. */
function linesOf(rings: readonly number[], side: TextShape['anchor']): string[] {
  if (side === 'middle') return [rings.join(', ')]
  const most = 2
  return Array.from({ length: Math.ceil(rings.length / most) }, (_, row) => rings.slice(row * most, (row + 1) * most).join(', '))
}

function byPosition(positions: readonly Degree[]): Map<number, number[]> {
  const found = new Map<number, number[]>()
  positions.forEach((at, ring) => {
    const turned = Math.round(((at % 360) + 360) % 360)
    found.set(turned, [...(found.get(turned) ?? []), ring + 1])
  })
  return found
}

/** A skive joint leans: its line runs a little askew from bore to stem. */
function jointAt(centre: Point, inner: number, outer: number, { at, side, lines }: Joint): Shape[] {
  const lean = 8
  const from = onCircle(centre, outer, at - lean / 2)
  const to = onCircle(centre, inner, at + lean)
  const [x, y] = onCircle(centre, outer + (side === 'middle' ? LETTER_OUTSIDE : LETTER_BESIDE), at)
  const top = y + 4 - ((lines.length - 1) * LINE_HEIGHT) / 2
  return [
    path(line(from, to), 'hotline'),
    ...lines.map((says, row) => lettering(says, [x, top + row * LINE_HEIGHT], { isBold: true, anchor: side })),
  ]
}

/** Clockwise from the top, as on a clock. */
function onCircle([x, y]: Point, radius: number, degreesFromTop: number): Point {
  const turned = (degreesFromTop * Math.PI) / 180
  return [x + radius * Math.sin(turned), y - radius * Math.cos(turned)]
}

/** Two half circles. The inner one runs the other way round, which leaves the hole open. */
function circle([x, y]: Point, radius: number, sweep: 0 | 1): string {
  return `M${x - radius} ${y}A${radius} ${radius} 0 1 ${sweep} ${x + radius} ${y}A${radius} ${radius} 0 1 ${sweep} ${x - radius} ${y}Z`
}
