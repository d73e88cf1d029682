import { formatMillimetres } from '@glandkeeper/units/format'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, outline, path, type Point, rectangle, type Shape } from './drawing.ts'
import { uprightDimension } from './upright-dimension.ts'

export interface LoadedGapToDraw {
  /** Null where that side was not read. */
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
  readonly expectedGap: Millimetre
  /** The gap may be off by this, either way. */
  readonly allowed: Millimetre
  readonly verdict: string
  readonly room: number
}

const MOST_PX_PER_MM = 9
const TALLEST_GAP = 110
const MOST_WIDTH = 340
const TOP = 30
const FLANGE = 16
const BELOW_NOSE = 34
const STEM_HALF = 22
const BORE_HALF = 48
const BOX_HALF = 78
const BESIDE = 14

/** The follower on its box as measured, and in dashes where it was expected. Only the gaps are to scale. */
export function loadedGapDrawing({ gapLeft, gapRight, expectedGap, allowed, verdict, room }: LoadedGapToDraw): Drawing {
  const left = gapLeft ?? gapRight ?? expectedGap
  const right = gapRight ?? left
  const most = Math.max(left, right, expectedGap + allowed, Number.MIN_VALUE)
  const scale = Math.min(MOST_PX_PER_MM, TALLEST_GAP / most)
  const width = Math.min(room, MOST_WIDTH)
  const axis = width / 2
  const face = TOP + FLANGE + most * scale
  const over = (gap: number): number => face - gap * scale
  const nose = most * scale + 22
  const bottom = face + nose + BELOW_NOSE
  /** The follower's underside, leaning so that both sides stand at their gap. */
  const under = (x: number): number => over(left) + ((over(right) - over(left)) * (x - axis + BOX_HALF)) / (2 * BOX_HALF)
  return {
    width,
    height: bottom + 44,
    says: inWords({ gapLeft, gapRight, expectedGap, allowed, verdict }),
    shapes: [
      ...[-1, 1].flatMap((side) => boxSide(axis, side, face, bottom, (x) => under(x) + nose)),
      path(rectangle([axis - STEM_HALF, TOP - 12], [axis + STEM_HALF, bottom + 6]), 'paperfill out'),
      ...[-1, 1].map((side) => path(followerSide(axis, side, under, nose), 'steel2 out')),
      ...expectation(axis, over(expectedGap), over(expectedGap + allowed), over(Math.max(expectedGap - allowed, 0))),
      ...sideFigure(axis - BOX_HALF, -1, face, over(left), gapLeft),
      ...sideFigure(axis + BOX_HALF, 1, face, over(right), gapRight),
      lettering(verdict, [axis, 12], { isBold: true, paint: verdict === 'good' ? 'ink' : 'hot' }),
      lettering(`dashed: expected ${formatMillimetres(expectedGap)}, within ${formatMillimetres(allowed)}`, [axis, bottom + 22], {
        paint: 'soft',
      }),
      lettering('gaps to scale; nothing else is', [axis, bottom + 38], { paint: 'soft' }),
    ],
  }
}

function inWords({ gapLeft, gapRight, expectedGap, allowed, verdict }: Omit<LoadedGapToDraw, 'room'>): string {
  const said = (side: string, gap: number | null) => `gap ${side} ${gap === null ? 'not read' : formatMillimetres(gap)}`
  return `Follower on its box: ${said('left', gapLeft)}, ${said('right', gapRight)}, expected ${formatMillimetres(expectedGap)} within ${formatMillimetres(allowed)}: ${verdict}`
}

function boxSide(axis: number, side: number, face: number, bottom: number, packingTop: (x: number) => number): Shape[] {
  const [inner, outer, stem] = [axis + side * BORE_HALF, axis + side * BOX_HALF, axis + side * STEM_HALF]
  return [
    path(rectangle([inner, face], [outer, bottom]), 'steel out'),
    path(
      outline([
        [stem, packingTop(stem)],
        [inner, packingTop(inner)],
        [inner, bottom],
        [stem, bottom],
      ]),
      'pack out',
    ),
  ]
}

function followerSide(axis: number, side: number, under: (x: number) => number, nose: number): string {
  const [stem, bore, flange] = [axis + side * STEM_HALF, axis + side * BORE_HALF, axis + side * BOX_HALF]
  const at = (x: number, down: number): Point => [x, under(x) + down]
  return outline([at(stem, -FLANGE), at(flange, -FLANGE), at(flange, 0), at(bore, 0), at(bore, nose), at(stem, nose)])
}

/** Where the underside was to stand, and how far off it may. */
function expectation(axis: number, expected: number, highest: number, lowest: number): Shape[] {
  const across = (y: number): string => line([axis - BOX_HALF - 6, y], [axis + BOX_HALF + 6, y])
  return [path(across(highest) + across(lowest), 'hair'), path(across(expected), 'ghost')]
}

function sideFigure(edge: number, side: number, face: number, under: number, gap: number | null): Shape[] {
  const x = edge + side * BESIDE
  const at: Point = [x + side * 7, (face + under) / 2 + 4]
  const anchor = side < 0 ? 'end' : 'start'
  if (gap === null) return [lettering('not read', at, { anchor, paint: 'soft' })]
  return [...uprightDimension(x, under, face, edge), lettering(formatMillimetres(gap), at, { anchor, isBold: true })]
}
