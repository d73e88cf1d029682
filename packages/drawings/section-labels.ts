import type { Point } from './drawing.ts'
import { followerTopAt, packingTopAt, type Placement, proportionsOf, undersideAt } from './section-geometry.ts'
import { type DrawnGland, heightOfPacking, type Measure } from './section-model.ts'

export interface Line {
  readonly text: string
  readonly tone: 'figure' | 'plain' | 'soft' | 'hot'
  /** Worked out or unknown, so underlined with dashes. */
  readonly isGuess?: boolean
}

export interface Label {
  readonly name: string
  readonly at: Point
  readonly anchor: 'start' | 'middle' | 'end'
  readonly lines: readonly Line[]
  readonly leader: readonly Point[]
  readonly isHot: boolean
}

export interface Dimension {
  readonly name: string
  readonly from: Point
  readonly to: Point
  readonly extensions: readonly (readonly [Point, Point])[]
  readonly isGuess: boolean
}

interface Wanted {
  readonly name: string
  readonly from: Point
  readonly lines: readonly Line[]
  readonly isHot?: boolean
}

const LINE_HEIGHT = 16
const FIGURE_HEIGHT = 22
/** Dimension lines stand off the drawing on two tracks: depths on the near one, gaps on the far one. */
const NEAR = 12
const FAR = 26
const TO_TEXT = 6

const figure = (value: number) => value.toFixed(1)
const short = (value: number) => String(Number(value.toFixed(1)))

export const heightOf = (lines: readonly Line[]) =>
  lines.reduce((sum, line) => sum + (line.tone === 'figure' ? FIGURE_HEIGHT : LINE_HEIGHT), 0)

/** Middles as near to the wanted ones as they can be without touching, in the order given. */
export function spread(
  wanted: readonly { readonly middle: number; readonly height: number }[],
  top: number,
  bottom: number,
): number[] {
  const air = 5
  const middles: number[] = []
  let free = top
  for (const { middle, height } of wanted) {
    const placed = Math.max(middle, free + height / 2)
    middles.push(placed)
    free = placed + height / 2 + air
  }
  let most = bottom
  for (let index = middles.length - 1; index >= 0; index--) {
    const height = wanted[index]?.height ?? 0
    const placed = Math.min(middles[index] ?? 0, most - height / 2)
    middles[index] = placed
    most = placed - height / 2 - air
  }
  return middles
}

export function labelsOf(gland: DrawnGland, place: Placement, height: number, thread: string | null): Label[] {
  const half = place.k * proportionsOf(gland).flangeHalf
  const axis = place.x(0)
  const left = column(leftOf(gland, place), 'end', axis - half - FAR - TO_TEXT, height)
  const right = column(rightOf(gland, place, thread), 'start', axis + half + FAR + TO_TEXT, height)
  const part = proportionsOf(gland)
  const stemTop = place.y(-part.top)
  const bottom = place.y(gland.depth + part.floor + part.medium)
  return [
    ...left,
    ...right,
    alone('stem', [axis, stemTop - 35], sized(gland, 'stem', `stem ⌀ ${short(gland.stem)}`)),
    alone('bore', [axis, Math.min(bottom + 36, height - 6)], sized(gland, 'bore', `bore ⌀ ${short(gland.bore)}`)),
  ]
}

function sized(gland: DrawnGland, measure: Measure, text: string): Line {
  return gland.assumed.has(measure) ? { text: `${measure} not measured`, tone: 'soft' } : { text, tone: 'plain' }
}

const alone = (name: string, at: Point, line: Line): Label => ({
  name,
  at,
  anchor: 'middle',
  lines: [line],
  leader: [],
  isHot: false,
})

function column(wanted: readonly Wanted[], anchor: 'start' | 'end', x: number, height: number): Label[] {
  const sorted = wanted.toSorted((a, b) => a.from[1] - b.from[1])
  const middles = spread(
    sorted.map(({ from, lines }) => ({ middle: from[1], height: heightOf(lines) })),
    4,
    height - 4,
  )
  const inwards = anchor === 'end' ? 3 : -3
  return sorted.map(({ name, from, lines, isHot = false }, index) => {
    const middle = middles[index] ?? from[1]
    return { name, at: [x, middle - heightOf(lines) / 2], anchor, lines, isHot, leader: [from, [x + inwards, middle]] }
  })
}

function gapLines(gland: DrawnGland, side: 'left' | 'right'): Line[] {
  const value = side === 'left' ? gland.gapLeft : gland.gapRight
  if (gland.assumed.has(`gap ${side}`))
    return [
      { text: `gap ${side}`, tone: 'soft' },
      { text: 'not measured', tone: 'soft' },
    ]
  return [
    { text: figure(value), tone: 'figure', isGuess: gland.gapIsInferred },
    { text: `gap ${side}`, tone: 'soft' },
  ]
}

function ringLines(gland: DrawnGland): Line[] {
  const rings = gland.assumed.has('rings') ? 'rings not' : `${gland.rings} ${gland.rings === 1 ? 'ring' : 'rings'}`
  const unsure = ['depth', 'nose', 'gap left', 'gap right'].some((measure) => gland.assumed.has(measure as Measure))
  const high: Line[] = unsure
    ? [
        { text: 'height', tone: 'soft' },
        { text: 'not known', tone: 'soft' },
      ]
    : [{ text: `${figure(heightOfPacking(gland))} high`, tone: 'plain', isGuess: gland.gapIsInferred }]
  return gland.assumed.has('rings')
    ? [{ text: rings, tone: 'soft' }, { text: 'recorded', tone: 'soft' }, ...high]
    : [{ text: rings, tone: 'plain' }, ...high]
}

function leftOf(gland: DrawnGland, place: Placement): Wanted[] {
  const part = proportionsOf(gland)
  const edge = place.x(-part.flangeHalf)
  const packingTop = packingTopAt(gland, -gland.bore / 2)
  return [
    { name: 'gap left', from: [edge - FAR, place.y(-gland.gapLeft / 2)], lines: gapLines(gland, 'left') },
    {
      name: 'keep clear',
      from: [edge - 4, place.y(-gland.keepClear)],
      lines: [
        { text: 'keep clear', tone: 'hot' },
        { text: figure(gland.keepClear), tone: 'hot' },
      ],
      isHot: true,
    },
    { name: 'rings', from: [edge - NEAR, place.y((packingTop + gland.depth) / 2)], lines: ringLines(gland) },
  ]
}

function rightOf(gland: DrawnGland, place: Placement, thread: string | null): Wanted[] {
  const part = proportionsOf(gland)
  const edge = place.x(part.flangeHalf)
  const seat = followerTopAt(gland, part, part.studAt)
  const section = (gland.bore - gland.stem) / 2
  const sectionKnown = !gland.assumed.has('bore') && !gland.assumed.has('stem')
  const packingTop = packingTopAt(gland, gland.bore / 2)
  return [
    {
      name: 'thread',
      from: [place.x(part.studAt + gland.studDiameter / 2), place.y(seat - part.nutHeight - part.studOver / 2)],
      lines:
        thread === null
          ? [
              { text: 'studs not', tone: 'soft' },
              { text: 'recorded', tone: 'soft' },
            ]
          : [{ text: thread, tone: 'plain' }],
    },
    {
      name: 'flange',
      from: [edge, place.y(seat + part.flange / 2)],
      lines: [{ text: gland.isTwoPiece ? 'bridge' : 'follower', tone: 'plain' }],
    },
    { name: 'gap right', from: [edge + FAR, place.y(-gland.gapRight / 2)], lines: gapLines(gland, 'right') },
    {
      name: 'section',
      from: [place.x((gland.bore / 2) * 0.98), place.y(packingTop + (gland.depth - packingTop) * 0.25)],
      lines: sectionKnown
        ? [
            { text: 'section', tone: 'soft' },
            { text: figure(section), tone: 'plain' },
          ]
        : [
            { text: 'section', tone: 'soft' },
            { text: 'not known', tone: 'soft' },
          ],
    },
    {
      name: 'depth',
      from: [edge + NEAR, place.y(packingTop + (gland.depth - packingTop) * 0.75)],
      lines: gland.assumed.has('depth')
        ? [
            { text: 'depth not', tone: 'soft' },
            { text: 'measured', tone: 'soft' },
          ]
        : [{ text: `depth ${short(gland.depth)}`, tone: 'plain' }],
    },
  ]
}

export function dimensionsOf(gland: DrawnGland, place: Placement): Dimension[] {
  const part = proportionsOf(gland)
  const at = (x: number, y: number): Point => [place.x(x), place.y(y)]
  const off = (x: number, y: number, px: number): Point => [place.x(x) + px, place.y(y)]
  const guess = (measure: Measure) => gland.assumed.has(measure)
  const across = (name: 'stem' | 'bore', half: number, from: number, px: number): Dimension => {
    const y = place.y(from) + px
    const beyond = y + Math.sign(px) * 4
    const end = (x: number): Point => [place.x(x), y]
    return {
      name,
      from: end(-half),
      to: end(half),
      isGuess: guess(name),
      extensions: [-half, half].map((x) => [at(x, name === 'bore' ? gland.depth : from), [place.x(x), beyond]] as const),
    }
  }
  const down = (
    name: string,
    side: number,
    track: number,
    y0: number,
    y1: number,
    from: readonly [number, number],
    isGuess: boolean,
  ): Dimension => ({
    name,
    from: off(side * part.flangeHalf, y0, side * track),
    to: off(side * part.flangeHalf, y1, side * track),
    isGuess,
    extensions: [
      [at(side * from[0], y0), off(side * part.flangeHalf, y0, side * (track + 4))],
      [at(side * from[1], y1), off(side * part.flangeHalf, y1, side * (track + 4))],
    ],
  })
  const under = (side: number) => undersideAt(gland, side * part.flangeHalf)
  const guessedGap = (side: 'left' | 'right') => guess(`gap ${side}`) || gland.gapIsInferred
  return [
    across('stem', gland.stem / 2, -part.top, -14),
    across('bore', gland.bore / 2, gland.depth + part.floor + part.medium, 18),
    down('gap left', -1, FAR, under(-1), 0, [part.flangeHalf, part.boxHalf], guessedGap('left')),
    down('gap right', 1, FAR, under(1), 0, [part.flangeHalf, part.boxHalf], guessedGap('right')),
    down(
      'rings',
      -1,
      NEAR,
      packingTopAt(gland, -gland.bore / 2),
      gland.depth,
      [gland.bore / 2, part.boxHalf],
      guess('nose') || guess('depth') || guessedGap('left'),
    ),
    down('depth', 1, NEAR, 0, gland.depth, [part.boxHalf, part.boxHalf], guess('depth')),
  ]
}
