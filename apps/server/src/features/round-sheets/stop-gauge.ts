import type { Standing } from '@glandkeeper/contract/reserve'
import type { CanvasElement } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import type { SheetStop } from './known.ts'

const { ink, accent, hatch, steel, pack, sheet } = paperColours

/** Points. Along the stem 2 points are 1 mm and the box face is always at the same place: a column of gauges is a chart. */
const POINTS_PER_MM = 2
const FACE = 36
const END = 80
const MOST_SHOWN_MM = 18
const HEIGHT = 20
const WALL = 3
const RING = 4
const BLOCK = 5
const HATCH_PITCH = 3

type At = readonly [x: number, y: number]
type Figures = Pick<SheetStop, 'gapLeft' | 'gapRight' | 'gapIsInferred' | 'card'>

/** The stuffing box on its side with the follower where it stands: solid is measured, dashed is worked out or not known. */
export function gaugeAt([x, y]: At, { gapLeft, gapRight, gapIsInferred, card: { gland } }: Figures): CanvasElement[] {
  const known = [gapLeft, gapRight].filter((gap) => gap !== null)
  const gap = known.length === 0 ? null : Math.min(...known)
  const face = x + FACE
  const blockX = face + POINTS_PER_MM * Math.min(gap ?? MOST_SHOWN_MM, MOST_SHOWN_MM)
  const packingTop =
    gap === null || gland.noseLength === null ? null : Math.max(face - POINTS_PER_MM * Math.max(gland.noseLength - gap, 0), x)
  const both = (from: number, thick: number, draw: (top: number, thick: number) => CanvasElement[]) =>
    [y + from, y + HEIGHT - from - thick].flatMap((top) => draw(top, thick))
  const follower = gapIsInferred || gap === null ? { dash: { length: 2 }, color: sheet } : { color: ink }
  return [
    ...both(0, WALL, (top, thick) => hatched([x, top], [FACE, thick], steel)),
    ...(packingTop === null ? [] : both(WALL, RING, (top, thick) => hatched([x, top], [packingTop - x, thick], pack))),
    ...both(WALL, RING, (top, h) =>
      packingTop === null ? [] : [rect([packingTop, top], [Math.max(blockX - packingTop, 0), h], { color: sheet })],
    ),
    ...both(WALL + RING, 0, (top) => [line([x, top], [x + END, top], ink, 0.6)]),
    ...both(1, RING + WALL - 1, (top, h) => [rect([blockX, top], [BLOCK, h], follower)]),
    line(...upright(face + POINTS_PER_MM * Math.min(gland.keepClear, MOST_SHOWN_MM), y), accent, 1.2),
  ]
}

const upright = (x: number, y: number): [At, At] => [
  [x, y - 1],
  [x, y + HEIGHT + 1],
]

function rect([x, y]: At, [w, h]: At, more: object): CanvasElement {
  return { type: 'rect', x, y, w, h, lineWidth: 0.6, lineColor: ink, ...more }
}

function line([x1, y1]: At, [x2, y2]: At, lineColor: string, lineWidth: number): CanvasElement {
  return { type: 'line', x1, y1, x2, y2, lineColor, lineWidth }
}

/** A wash under a hatching, as everywhere else: steel and packing are told apart without colour by the second stroke. */
function hatched([x, y]: At, [width, height]: At, wash: string): CanvasElement[] {
  const strokes = Array.from(
    { length: Math.max(Math.floor((width - height) / HATCH_PITCH) + 1, 0) },
    (_, index) => x + index * HATCH_PITCH,
  )
  return [
    rect([x, y], [width, height], { color: wash }),
    ...strokes.map((from) => line([from, y + height], [from + height, y], hatch, 0.4)),
    ...(wash === pack ? strokes.map((from) => line([from, y], [from + height, y + height], hatch, 0.4)) : []),
  ]
}

/** Two bars apart, a sight hole, a ribbon, two bars met: the shapes of the screen, 8 points high. */
export function standingAt([x, y]: At, standing: Standing): CanvasElement[] {
  const half = (figure: number) => figure / 2
  const place = ([dx, dy]: At) => ({ x: x + half(dx), y: y + half(dy) })
  switch (standing) {
    case 'ample':
      return [
        line([x + 1, y + 1.1], [x + 7, y + 1.1], ink, 0.9),
        line([x + 1, y + 6.9], [x + 7, y + 6.9], ink, 0.9),
        line([x + 4, y + 1.1], [x + 4, y + 6.9], ink, 0.9),
      ]
    case 'watch':
      return [
        { type: 'ellipse', x: x + 4, y: y + 4, r1: 2.9, r2: 2.9, lineWidth: 0.9, lineColor: ink },
        { type: 'ellipse', x: x + 4, y: y + 4, r1: 1, r2: 1, lineWidth: 0, color: ink },
      ]
    case 'book':
      return [{ type: 'polyline', closePath: true, lineWidth: 0, color: accent, points: ribbon.map(place) }]
    case 'spent':
      return [rect([x + 0.5, y + 2], [7, 1.6], solid), rect([x + 0.5, y + 4.6], [7, 1.6], solid)]
  }
}

const solid = { color: accent, lineColor: accent, lineWidth: 0 }
const ribbon: readonly At[] = [
  [3.5, 1.5],
  [12.5, 1.5],
  [12.5, 14.5],
  [8, 10.5],
  [3.5, 14.5],
]
