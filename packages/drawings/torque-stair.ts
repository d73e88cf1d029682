import type { NewtonMetre, Ratio } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path, rectangle, type Shape } from './drawing.ts'

export interface TorqueStairToDraw {
  /** Empty where the studs cannot bear the load and no torque is given. */
  readonly steps: readonly { readonly share: Ratio; readonly torque: NewtonMetre }[]
  /** Share of the studs' proof stress at the whole load, and the same should the nuts run smooth. */
  readonly utilisation: Ratio
  readonly utilisationAtMost: Ratio
  /** Share of the proof stress from which an engineer is asked. */
  readonly limit: Ratio
  readonly room: number
}

const MOST_WIDTH = 460
const TALL = 150
const TOP = 14
const LEFT = 74
const RIGHT = 102
const LETTER = 15
/** Shown over the proof line at most: what stands higher is cut off. */
const HIGHEST_SHOWN = 1.5

/** Each step of the torque as a column of what the studs carry, against their proof stress; dashed should the nuts run smooth. */
export function torqueStairDrawing({ steps, utilisation, utilisationAtMost, limit, room }: TorqueStairToDraw): Drawing {
  const width = Math.min(room, MOST_WIDTH)
  const top = Math.min(Math.max(1.1, utilisationAtMost * 1.04), HIGHEST_SHOWN)
  const floor = TOP + TALL
  const y = (share: number): number => floor - (Math.min(share, top) / top) * TALL
  const columns = steps.length > 0 ? steps : [{ share: 1, torque: null }]
  const each = (width - LEFT - RIGHT) / columns.length
  const x = (index: number): number => LEFT + index * each
  const end = LEFT + columns.length * each
  const isOver = utilisation > limit
  return {
    width,
    height: floor + 40,
    says: inWords({ steps, utilisation, utilisationAtMost, limit }),
    shapes: [
      ...columns.map(({ share }, index) =>
        path(rectangle([x(index), y(share * utilisation)], [x(index + 1), floor]), 'plain out'),
      ),
      ...columns.map(({ share }, index) =>
        path(line([x(index), y(share * utilisationAtMost)], [x(index + 1), y(share * utilisationAtMost)]), 'ghost'),
      ),
      ...ruled(y, end, limit),
      path(line([LEFT, TOP], [LEFT, floor]) + line([LEFT, floor], [end, floor]), 'thin'),
      ...columns.flatMap(({ share, torque }, index) => underColumn(x(index) + each / 2, floor, share, torque)),
      lettering(percent(utilisation), [end + 8, y(utilisation) + 4], {
        anchor: 'start',
        isBold: true,
        paint: isOver ? 'hot' : 'ink',
      }),
      lettering(
        `${percent(utilisationAtMost)} if smooth`,
        [end + 8, Math.min(y(utilisationAtMost) + 4, y(utilisation) + 4 - LETTER)],
        {
          anchor: 'start',
          paint: 'soft',
        },
      ),
    ],
  }
}

/** Nought, the limit and the proof stress, named at the left. */
function ruled(y: (share: number) => number, end: number, limit: number): Shape[] {
  const name = (says: string, share: number): Shape => lettering(says, [LEFT - 8, y(share) + 4], { anchor: 'end' })
  return [
    path(line([LEFT - 4, y(1)], [end, y(1)]), 'out'),
    path(line([LEFT - 4, y(limit)], [end, y(limit)]), 'hair'),
    name('proof', 1),
    name(`${percent(limit)} of it`, limit),
    name('0', 0),
  ]
}

function underColumn(middle: number, floor: number, share: number, torque: number | null): Shape[] {
  if (torque === null) return [lettering('this load: no torque is given', [middle, floor + 18], { paint: 'hot' })]
  return [
    lettering(`${torque.toFixed(1)}\u00a0N·m`, [middle, floor + 18], { isBold: true }),
    lettering(percent(share), [middle, floor + 34], { paint: 'soft' }),
  ]
}

function percent(share: number): string {
  return share > 10 ? 'over 1000\u00a0%' : `${Math.round(share * 100)}\u00a0%`
}

function inWords({ steps, utilisation, utilisationAtMost, limit }: Omit<TorqueStairToDraw, 'room'>): string {
  const stepped =
    steps.length === 0
      ? 'no torque is given'
      : `torque in steps of ${steps.map(({ torque }) => `${torque.toFixed(1)} N·m`).join(', ')}`
  return `${stepped[0]?.toUpperCase() ?? ''}${stepped.slice(1)}; at the end the studs carry ${percent(utilisation)} of their proof stress, ${percent(utilisationAtMost)} should the nuts run smooth; ask from ${percent(limit)}`
}
