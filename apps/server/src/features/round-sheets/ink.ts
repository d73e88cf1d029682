import type { CanvasElement, ContentText } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { LINE } from '../../platform/paper/lettering.ts'

/** A4 upright, in points. */
export const paper = { width: 595.28, height: 841.89, edge: 24 } as const
/** What lies between the edges that printers leave white. */
export const inside = paper.width - 2 * paper.edge

/** What is drawn on one page and what is written on it: the lines go into one drawing, the letters stand on it. */
export interface Page {
  readonly lines: CanvasElement[]
  readonly letters: ContentText[]
}

export const newPage = (): Page => ({ lines: [], letters: [] })

interface Letters {
  readonly size: number
  readonly bold?: boolean
  readonly color?: string
}

/** One line of lettering with its top left corner at a place. It is never broken: whoever writes has measured it. */
export function write({ letters }: Page, text: string, [x, y]: readonly [number, number], { size, bold, color }: Letters): void {
  if (text === '') return
  letters.push({
    text,
    font: 'Lettering',
    fontSize: size,
    bold: bold ?? false,
    color: color ?? paperColours.ink,
    noWrap: true,
    absolutePosition: { x, y },
  })
}

/** Several lines, one under the other; tells where the next would stand. */
export function writeLines(page: Page, lines: readonly string[], [x, y]: readonly [number, number], letters: Letters): number {
  for (const [index, line] of lines.entries()) write(page, line, [x, y + index * letters.size * LINE], letters)
  return y + lines.length * letters.size * LINE
}

export function rule({ lines }: Page, from: readonly [number, number], to: readonly [number, number], width = 0.5): void {
  const [x1, y1] = from
  const [x2, y2] = to
  lines.push({ type: 'line', x1, y1, x2, y2, lineWidth: width, lineColor: paperColours.ink })
}

/** To write in by pencil: its name is small in the corner, the rest is room. */
export function writeInBox(page: Page, name: string, [x, y]: readonly [number, number], [w, h]: readonly [number, number]): void {
  page.lines.push({ type: 'rect', x, y, w, h, lineWidth: 0.8, lineColor: paperColours.ink })
  write(page, name, [x + 2, y + 1], { size: 5.5, color: paperColours.soft })
}

export function tickBox({ lines }: Page, [x, y]: readonly [number, number], side: number): void {
  lines.push({ type: 'rect', x, y, w: side, h: side, lineWidth: 0.8, lineColor: paperColours.ink })
}
