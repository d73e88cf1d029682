import type { Megapascal } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, outline, path } from './drawing.ts'

const BAR = 22
const LEFT = 96
const ABOVE = 8
const RIGHT = 64

/** Stress under the follower and under each ring, as bars from one line: the eye sees how fast it falls. */
export function stressProfileDrawing({
  stresses,
  room,
}: {
  readonly stresses: readonly Megapascal[]
  readonly room: number
}): Drawing {
  const most = Math.max(...stresses, Number.MIN_VALUE)
  const widest = Math.min(room - LEFT - RIGHT, 420)
  const height = ABOVE * 2 + stresses.length * BAR
  return {
    width: LEFT + widest + RIGHT,
    height,
    says: `Stress from the follower down: ${stresses.map((stress) => `${stress.toFixed(1)} MPa`).join(', ')}`,
    shapes: [
      ...stresses.flatMap((stress, ring) => {
        const y = ABOVE + ring * BAR
        const end = LEFT + (stress / most) * widest
        return [
          path(
            outline([
              [LEFT, y + 3],
              [end, y + 3],
              [end, y + BAR - 3],
              [LEFT, y + BAR - 3],
            ]),
            'pack out',
          ),
          lettering(ring === 0 ? 'follower' : `under ring ${ring}`, [LEFT - 8, y + 16], { anchor: 'end' }),
          lettering(`${stress.toFixed(1)} MPa`, [end + 8, y + 16], { anchor: 'start', isBold: ring === stresses.length - 1 }),
        ]
      }),
      path(line([LEFT, ABOVE - 4], [LEFT, height - ABOVE + 4]), 'out'),
    ],
  }
}
