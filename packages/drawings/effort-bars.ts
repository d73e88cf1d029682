import { formatFigure } from '@glandkeeper/units/figure'
import { type Drawing, lettering, line, path, rectangle, type Shape } from './drawing.ts'

/** What the packing takes of one thing, and what there is of it: in one unit. */
export interface Effort {
  readonly what: string
  readonly taken: number
  readonly has: number
  readonly hasSays: string
  /** What the packing may take, where that is less than all. */
  readonly allowed: number | null
  readonly unit: string
}

const MOST_WIDTH = 460
const LEFT = 2
const ROW = 74
const BAR = 22
/** A share beyond this is cut off with a break, so that what there is stays to be seen. */
const MOST_TIMES = 3

/** For each way of moving the stem a bar of what the packing takes, in the outline of what hand or drive has. */
export function effortBarsDrawing({ efforts, room }: { readonly efforts: readonly Effort[]; readonly room: number }): Drawing {
  const width = Math.min(room, MOST_WIDTH)
  return {
    width,
    height: efforts.length * ROW,
    says: efforts.map(inWords).join('; '),
    shapes: efforts.flatMap((effort, row) => bars(effort, row * ROW, width - 2 * LEFT - 10)),
  }
}

function bars({ what, taken, has, hasSays, allowed, unit }: Effort, top: number, widest: number): Shape[] {
  const shown = Math.min(taken, has * MOST_TIMES)
  const x = (effort: number): number => LEFT + (effort / Math.max(shown, has)) * widest
  const [over, under] = [top + 20, top + 20 + BAR]
  const isTooMuch = taken > (allowed ?? has)
  return [
    path(rectangle([LEFT, over], [x(has), under]), 'paperfill out'),
    path(rectangle([LEFT, over + 5], [x(shown), under - 5]), 'plain out'),
    ...(shown < taken ? [path(broken(x(shown), over, under), 'out')] : []),
    ...(allowed === null ? [] : [path(line([x(allowed), over - 4], [x(allowed), under + 4]), 'hotline', true)]),
    path(line([x(has), over - 4], [x(has), under + 4]), 'out'),
    lettering(`${what}: ${amount(taken, unit)} of ${amount(has, unit)}`, [LEFT, top + 13], {
      anchor: 'start',
      isBold: true,
      paint: isTooMuch ? 'hot' : 'ink',
    }),
    lettering(
      `outline: ${hasSays}${allowed === null ? '' : `; dashed: ${amount(allowed, unit)} it may take`}`,
      [LEFT, under + 17],
      {
        anchor: 'start',
        paint: 'soft',
      },
    ),
  ]
}

function broken(x: number, over: number, under: number): string {
  return line([x - 8, under], [x - 2, over]) + line([x - 2, under], [x + 4, over])
}

const amount = (value: number, unit: string): string => formatFigure(value, unit, unit === 'N' ? 0 : 1)

function inWords({ what, taken, has, allowed, hasSays, unit }: Effort): string {
  return `${what}: the packing takes ${amount(taken, unit)} of ${amount(has, unit)} (${hasSays})${allowed === null ? '' : `, and may take ${amount(allowed, unit)}`}`
}
