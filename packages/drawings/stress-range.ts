import type { Megapascal } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path, rectangle, type Shape } from './drawing.ts'

export interface StressRangeToDraw {
  readonly lowest: Megapascal
  readonly usual: Megapascal
  readonly highest: Megapascal
  /** What each kind of packing is usually given at least. */
  readonly least: readonly { readonly packing: string; readonly stress: Megapascal }[]
  readonly room: number
}

const MOST_WIDTH = 460
const LEFT = 20
const RIGHT = 30
const ROW = 17
const BAR = 20
/** Half of the longest words written at a place on the scale. */
const HALF_WORDS = 112

/** Stress the measured torque may stand for: from the least to the most, the likely one marked, against what packing needs. */
export function stressRangeDrawing({ lowest, usual, highest, least, room }: StressRangeToDraw): Drawing {
  const width = Math.min(room, MOST_WIDTH)
  const most = Math.max(highest, ...least.map(({ stress }) => stress), Number.MIN_VALUE)
  const x = (stress: number): number => LEFT + (stress / most) * (width - LEFT - RIGHT)
  const inside = (at: number): number => Math.min(Math.max(at, HALF_WORDS), width - HALF_WORDS)
  const bar = (least.length + 1) * ROW + 12
  const floor = bar + BAR + 12
  return {
    width,
    height: floor + 40,
    says: inWords({ lowest, usual, highest, least }),
    shapes: [
      path(rectangle([x(lowest), bar], [x(highest), bar + BAR]), 'plain out'),
      ...least.flatMap(({ packing, stress }, row) => needed(x(stress), (row + 1) * ROW, floor, `${packing} ${figure(stress)}`)),
      path(line([x(usual), bar - 6], [x(usual), bar + BAR + 6]), 'out'),
      lettering(
        `likely ${figure(usual)}, from ${figure(lowest)} to ${figure(highest)}\u00a0MPa`,
        [inside(x(usual)), floor + 18],
        {
          isBold: true,
        },
      ),
      path(line([LEFT, floor], [width - RIGHT + 10, floor]) + line([LEFT, floor - 5], [LEFT, floor + 5]), 'thin'),
      lettering('0', [LEFT - 12, floor + 4]),
      lettering('dashed: least stress, common practice, no source', [LEFT, floor + 36], { anchor: 'start', paint: 'soft' }),
    ],
  }
}

/** A dashed line at a usual least stress, its name to the left of it on a row of its own. */
function needed(x: number, row: number, floor: number, says: string): Shape[] {
  return [
    path(line([x, row - 11], [x, floor]), 'thin', true),
    x < HALF_WORDS
      ? lettering(says, [x + 5, row], { anchor: 'start', paint: 'soft' })
      : lettering(says, [x - 5, row], { anchor: 'end', paint: 'soft' }),
  ]
}

const figure = (stress: number): string => stress.toFixed(1)

function inWords({ lowest, usual, highest, least }: Omit<StressRangeToDraw, 'room'>): string {
  const needs = least.map(({ packing, stress }) => `${packing} ${figure(stress)} MPa`).join(', ')
  return `Stress on the packing: likely ${figure(usual)} MPa, from ${figure(lowest)} to ${figure(highest)} MPa; least by common practice ${needs}`
}
