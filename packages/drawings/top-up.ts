import { formatMillimetres } from '@glandkeeper/units/format'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path, type Point, rectangle, type Shape } from './drawing.ts'
import { uprightDimension } from './upright-dimension.ts'

export interface TopUpToDraw {
  /** Nose in the box now: depth from the face down to the packing. */
  readonly followerEntry: Millimetre
  readonly section: Millimetre
  readonly leastEngagement: Millimetre
  readonly room: number
}

const MOST_PX_PER_MM = 7
const TALLEST = 150
const WIDEST_RING = 56
const STEM = 18
const WALL = 20
const FIGURE = 82
const ABOVE = 22
const HEADING = 24

/** The nose in the box now, and beside it where it would start on one more ring. Both to one scale. */
export function topUpDrawing({ followerEntry, section, leastEngagement, room }: TopUpToDraw): Drawing {
  const left = followerEntry - section
  const deepest = Math.max(followerEntry, leastEngagement, section) + section
  const widest = Math.min(WIDEST_RING, (room - 4) / 2 - STEM - WALL - FIGURE)
  const scale = Math.min(MOST_PX_PER_MM, TALLEST / deepest, widest / section)
  const view = STEM + section * scale + WALL + FIGURE
  const apart = Math.max(0, Math.min(24, room - 2 * view - 4))
  // On one more ring the follower stands higher by a section.
  const face = HEADING + ABOVE + section * scale
  const at = (x: number) => ({ x, face, scale, section, bottom: followerEntry + section, leastEngagement })
  return {
    width: 4 + 2 * view + apart,
    height: face + Math.max(followerEntry + section, leastEngagement) * scale + 12,
    says: `Nose ${formatMillimetres(followerEntry)} in the box now; on one more ring of ${formatMillimetres(section)} ${entryInWords(left)}; least ${formatMillimetres(leastEngagement)}`,
    shapes: [
      ...boxWithNose({ ...at(2), entry: followerEntry, packing: followerEntry, heading: 'now' }),
      ...boxWithNose({ ...at(2 + view + apart), entry: left, packing: followerEntry, heading: 'one ring more' }),
    ],
  }
}

const entryInWords = (entry: number): string => (entry > 0 ? `it enters by ${formatMillimetres(entry)}` : 'it does not enter')

interface View {
  readonly x: number
  readonly face: number
  readonly scale: number
  readonly section: number
  readonly bottom: number
  readonly leastEngagement: number
  readonly entry: number
  /** Depth of the packing that is there. */
  readonly packing: number
  readonly heading: string
}

function boxWithNose({ x, face, scale, section, bottom, leastEngagement, entry, packing, heading }: View): Shape[] {
  const [stem, wall] = [x + STEM, x + STEM + section * scale]
  const y = (depth: number): number => face + depth * scale
  const isNew = entry < packing
  const isShort = entry < leastEngagement
  const top = y(entry - packing) - ABOVE
  const block = (from: Point, to: Point): string => rectangle(from, to)
  return [
    path(block([x, top - 4], [stem, y(bottom) + 6]), 'paperfill out'),
    path(block([wall, face], [wall + WALL, y(bottom)]), 'steel out'),
    path(block([stem, y(packing)], [wall, y(bottom)]), 'pack out'),
    ...(isNew ? [path(block([stem, y(entry)], [wall, y(packing)]), 'pack out', true)] : []),
    path(block([stem, top], [wall, y(entry)]), 'steel2 out', isNew),
    path(line([stem - 6, y(leastEngagement)], [wall + WALL, y(leastEngagement)]), 'hotline', true),
    ...entryFigure(wall + WALL, y, entry, isShort, leastEngagement),
    lettering(heading, [x, HEADING - 10], { anchor: 'start', isBold: true }),
  ]
}

/** The least is written under the entry, or under itself where the two lie far enough apart. */
function entryFigure(edge: number, y: (mm: number) => number, entry: number, isShort: boolean, least: number): Shape[] {
  const x = edge + 12
  const shown = Math.max(entry, 0)
  const middle = (y(0) + y(shown)) / 2 + 4
  const of = { anchor: 'start', paint: isShort ? 'hot' : 'ink', isBold: true } as const
  const under = Math.max(middle + 16, y(least) + 14)
  return [
    ...(shown > 0 ? uprightDimension(x, y(0), y(shown), edge) : []),
    lettering(shown > 0 ? formatMillimetres(entry) : 'none left', [x + 7, middle], of),
    lettering(`least ${formatMillimetres(least)}`, [x + 7, under], { anchor: 'start', paint: 'soft' }),
  ]
}
