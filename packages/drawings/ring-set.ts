import { formatMillimetres } from '@glandkeeper/units/format'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, outline, type Paint, path, rectangle, type Shape } from './drawing.ts'
import { uprightDimension } from './upright-dimension.ts'

export interface RingSetToDraw {
  readonly boxDepth: Millimetre
  readonly section: Millimetre
  readonly rings: number
  readonly consolidatedHeight: Millimetre
  readonly expectedGap: Millimetre
  /** How far the follower goes down from the loose set to the loaded one. */
  readonly takeUp: Millimetre
  readonly noseLength: Millimetre
  readonly bottomBush: Millimetre
  readonly lanternRing: Millimetre
  readonly spacer: Millimetre
  readonly room: number
}

const MOST_HEIGHT = 300
const TOP = 14
const BOTTOM = 32
const LEFT = 84
/** Px: of less the dashes would lie on the outline. */
const LEAST_SHOWN = 12

/** One side of the box after loading: what fills it from the bottom, the nose on top, and the gap that is left; in dashes the follower on the loose set. */
export function ringSetDrawing(set: RingSetToDraw): Drawing {
  const { boxDepth, section, rings, consolidatedHeight, expectedGap, takeUp, noseLength, bottomBush, lanternRing, spacer, room } =
    set
  const flange = Math.max(section, 4)
  const looseGap = expectedGap + takeUp
  const tall = looseGap + flange + boxDepth
  const scale = Math.min((MOST_HEIGHT - TOP - BOTTOM) / tall, (room - 2 * LEFT) / (section * 4), 6)
  const face = TOP + (looseGap + flange) * scale
  const y = (depth: number): number => face + depth * scale
  const stem = LEFT + section * scale
  const wall = stem + section * scale
  const block = (from: number, to: number, paint: Paint): Shape => path(rectangle([stem, y(from)], [wall, y(to)]), paint)
  const packingTop = boxDepth - bottomBush - lanternRing - spacer - consolidatedHeight
  const ringHeight = consolidatedHeight / rings
  const right = wall + section * scale * 1.6
  const follower = (gap: number): string =>
    nose({ stem, wall, right, top: y(0 - gap - flange), under: y(0 - gap), end: y(Math.min(noseLength - gap, boxDepth)) })
  return {
    width: Math.min(room, right + LEFT),
    height: y(boxDepth) + BOTTOM,
    says: `${rings} rings loaded to ${formatMillimetres(consolidatedHeight)} in a box ${formatMillimetres(boxDepth)} deep, gap ${formatMillimetres(expectedGap)}, ${formatMillimetres(looseGap)} while loose`,
    shapes: [
      path(rectangle([LEFT, TOP], [stem, y(boxDepth) + 10]), 'paperfill out'),
      path(rectangle([wall, face], [right, y(boxDepth)]), 'steel out'),
      ...Array.from({ length: rings }, (_, ring) =>
        block(packingTop + ring * ringHeight, packingTop + (ring + 1) * ringHeight, 'pack out'),
      ),
      ...fillers(boxDepth, [bottomBush, lanternRing, spacer], block),
      path(follower(expectedGap), 'steel2 out'),
      ...(takeUp * scale < LEAST_SHOWN
        ? []
        : [
            path(follower(looseGap), 'ghost'),
            lettering(`loose ${looseGap.toFixed(1)}`, [right + 8, y(0 - looseGap) + 4], { anchor: 'start', paint: 'soft' }),
          ]),
      ...uprightDimension(right + 22, y(0 - expectedGap), face, right),
      lettering(formatMillimetres(expectedGap), [right + 30, (y(0 - expectedGap) + face) / 2 + 4], {
        anchor: 'start',
        isBold: true,
      }),
      path(line([LEFT - 20, face], [LEFT - 20, y(boxDepth)]), 'dim'),
      lettering(formatMillimetres(boxDepth), [LEFT - 28, y(boxDepth / 2)], { anchor: 'end' }),
      lettering('stem', [(LEFT + stem) / 2, y(boxDepth) + 26], { paint: 'soft' }),
    ],
  }
}

/** Bush at the bottom, lantern ring and spacer over it: rigid, so drawn as plain steel. */
function fillers(depth: number, heights: readonly number[], block: (from: number, to: number, paint: Paint) => Shape): Shape[] {
  let bottom = depth
  return heights.flatMap((height) => {
    if (!(height > 0)) return []
    bottom -= height
    return [block(bottom, bottom + height, 'plain out')]
  })
}

function nose(at: { stem: number; wall: number; right: number; top: number; under: number; end: number }): string {
  return outline([
    [at.stem, at.top],
    [at.right, at.top],
    [at.right, at.under],
    [at.wall, at.under],
    [at.wall, at.end],
    [at.stem, at.end],
  ])
}
