import { formatFigure } from '@glandkeeper/units/figure'
import { type Drawing, lettering, line, path, rectangle, type Shape } from './drawing.ts'

export interface LeakBar {
  readonly says: string
  readonly amount: number
  /** The one that was asked for, beside others of the same leak. */
  readonly isMain: boolean
}

const MOST_WIDTH = 460
const LEFT = 6
const RIGHT = 84
const ROW = 38
const TICKS = 4

/** The same leak by each way of reckoning it, as bars over one scale from nought: the eye sees how far apart they are. */
export function leakBarsDrawing(leak: {
  readonly bars: readonly LeakBar[]
  readonly unit: string
  readonly room: number
}): Drawing {
  const { bars, unit, room } = leak
  const width = Math.min(room, MOST_WIDTH)
  // Of no leak at all the scale is any scale.
  const most = Math.max(...bars.map(({ amount }) => amount)) || 1
  const step = niceStep(most / TICKS)
  const ticks = Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, index) => index * step)
  const x = (amount: number): number => LEFT + (amount / most) * (width - LEFT - RIGHT)
  const floor = bars.length * ROW + 6
  const written = (amount: number): string => formatFigure(amount, unit, 1)
  return {
    width,
    height: floor + 24,
    says: bars.map(({ says, amount }) => `${says}: ${written(amount)}`).join('; '),
    shapes: [
      ...ticks.flatMap((tick) => ruled(x(tick), floor, formatFigure(tick, '', 0))),
      ...bars.flatMap(({ says, amount, isMain }, row): Shape[] => [
        path(rectangle([LEFT, row * ROW + 18], [x(amount), row * ROW + 32]), isMain ? 'plain out' : 'paperfill out'),
        lettering(says, [LEFT + 2, row * ROW + 13], { anchor: 'start', paint: isMain ? 'ink' : 'soft', isBold: isMain }),
        lettering(written(amount), [x(amount) + 8, row * ROW + 30], { anchor: 'start', isBold: isMain }),
      ]),
      path(line([LEFT, 14], [LEFT, floor]), 'out'),
      path(line([LEFT, floor], [x(most), floor]), 'thin'),
    ],
  }
}

function ruled(x: number, floor: number, says: string): Shape[] {
  return [path(line([x, floor - 5], [x, floor]), 'hair'), lettering(says, [x, floor + 16], { paint: 'soft' })]
}

/** The next 1, 2 or 5 of its power of ten. */
function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough))
  return ([1, 2, 5].find((times) => times * power >= rough * 0.999) ?? 10) * power
}
