import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, test } from 'vitest'
import { placementOf, proportionsOf, type Room, shapesOf } from './section-geometry.ts'
import { dimensionsOf, heightOf, labelsOf, spread } from './section-labels.ts'
import { drawnGland, scaleNote } from './section-model.ts'

const room: Room = { width: 584, mostHeight: 560, gutter: 114 }
const phone: Room = { width: 358, mostHeight: 440, gutter: 102 }

const gland = (overrides: ValveOverrides['gland'] = {}) => aValve({ gland: overrides }).gland
const gaps = (gapLeft: number | null, gapRight: number | null) => ({ gapLeft, gapRight, gapIsInferred: false })

const extremes = [
  { boxBore: 12, stemDiameter: 6, boxDepth: 20, noseLength: 10, studThread: 'M6', gap: 0 },
  { boxBore: 12, stemDiameter: 6, boxDepth: 20, noseLength: 10, studThread: 'M6', gap: 40 },
  { boxBore: 200, stemDiameter: 120, boxDepth: 150, noseLength: 60, studThread: 'M36', gap: 0 },
  { boxBore: 200, stemDiameter: 120, boxDepth: 150, noseLength: 60, studThread: 'M36', gap: 40 },
]

describe.each([{ boxBore: 45, stemDiameter: 28, gap: 7 }, ...extremes])(
  'a gland of $boxBore/$stemDiameter with a gap of $gap',
  ({ gap, ...dimensions }) => {
    const drawn = drawnGland(gland(dimensions), gaps(gap, gap), 5)
    const place = placementOf(drawn, room)
    const shapes = shapesOf(drawn, place)

    test('bore, stem, depth and gap measured on the paper are the true ones', () => {
      const bore = dimensionsOf(drawn, place).find(({ name }) => name === 'bore')
      expect(((bore?.to[0] ?? 0) - (bore?.from[0] ?? 0)) / place.k).toBeCloseTo(drawn.bore, 6)
      expect((shapes.stem.right - shapes.stem.left) / place.k).toBeCloseTo(drawn.stem, 6)
      const [wall] = shapes.walls
      expect(((wall?.[2]?.[1] ?? 0) - (wall?.[0]?.[1] ?? 0)) / place.k).toBeCloseTo(drawn.depth, 6)
      const left = dimensionsOf(drawn, place).find(({ name }) => name === 'gap left')
      expect(((left?.to[1] ?? 0) - (left?.from[1] ?? 0)) / place.k).toBeCloseTo(gap, 6)
    })

    test('all of it lies within its room', () => {
      const points = [...shapes.walls, ...shapes.bridge, ...shapes.bush, ...shapes.studs, ...shapes.nuts].flat()
      expect(Math.min(...points.map(([x]) => x))).toBeGreaterThanOrEqual(room.gutter - 0.01)
      expect(Math.max(...points.map(([x]) => x))).toBeLessThanOrEqual(room.width - room.gutter + 0.01)
      expect(Math.min(...points.map(([, y]) => y))).toBeGreaterThan(0)
      expect(Math.max(...points.map(([, y]) => y))).toBeLessThan(place.height)
    })

    test.each([room, phone])('no two figures of one side touch at width $width', (narrow) => {
      const at = placementOf(drawn, narrow)
      const height = Math.max(at.height, 230)
      for (const anchor of ['start', 'end'] as const) {
        const column = labelsOf(drawn, at, height, 'M12').filter((label) => label.anchor === anchor)
        column.forEach((label, index) => {
          const below = column[index + 1]
          expect(label.at[1]).toBeGreaterThanOrEqual(0)
          if (below) expect(label.at[1] + heightOf(label.lines)).toBeLessThanOrEqual(below.at[1])
          else expect(label.at[1] + heightOf(label.lines)).toBeLessThanOrEqual(height)
        })
      }
    })
  },
)

test('labels that want one place are put one under the other, inside the drawing at both ends', () => {
  const three = (middle: number) => [
    { middle, height: 20 },
    { middle, height: 20 },
    { middle, height: 20 },
  ]
  expect(spread(three(0), 4, 200)).toEqual([14, 39, 64])
  expect(spread(three(200), 4, 200)).toEqual([140, 165, 190])
})

test('a tilted follower stands at the measured gap on each side', () => {
  const drawn = drawnGland(gland(), gaps(7.4, 6.6), 5)
  const place = placementOf(drawn, room)
  const flange = proportionsOf(drawn).flangeHalf
  const [left, right] = shapesOf(drawn, place).bridge
  const bottomAt = (outline = left, x = 0) => outline?.find(([px]) => Math.abs(px - place.x(x)) < 0.01)?.[1] ?? Number.NaN
  const collar = proportionsOf(drawn).collar
  expect((place.y(0) - bottomAt(left, -flange)) / place.k - collar).toBeCloseTo(7.4, 6)
  expect((place.y(0) - bottomAt(right, flange)) / place.k - collar).toBeCloseTo(6.6, 6)
})

test('the rings fill the box from its floor to the nose, one above the other', () => {
  const drawn = drawnGland(gland(), gaps(7, 7), 5)
  const place = placementOf(drawn, room)
  const { rings } = shapesOf(drawn, place)
  expect(rings).toHaveLength(5)
  expect(rings[0]?.left[0]?.[1]).toBeCloseTo(place.y(48), 6)
  expect(rings[4]?.left[3]?.[1]).toBeCloseTo(place.y(20 - 7), 6)
  expect(rings[1]?.left[0]?.[1]).toBeCloseTo(rings[0]?.left[3]?.[1] ?? 0, 6)
})

test('a follower that stands clear of the box leaves no packing above the face', () => {
  const drawn = drawnGland(gland({ noseLength: 10 }), gaps(40, 40), 4)
  const place = placementOf(drawn, room)
  expect(shapesOf(drawn, place).rings[3]?.left[3]?.[1]).toBeCloseTo(place.y(0), 6)
  expect(scaleNote(drawn)).toContain('stands clear of the box')
})

test('what nobody measured is said and the drawing does not claim a scale', () => {
  const drawn = drawnGland(gland({ boxBore: null, studThread: null }), gaps(7, null), null)
  const place = placementOf(drawn, room)
  const said = labelsOf(drawn, place, place.height, null)
    .flatMap(({ lines }) => lines.map(({ text }) => text))
    .join(' ')
  expect(said).toContain('bore not measured')
  expect(said).toContain('gap right not measured')
  expect(said).toContain('studs not recorded')
  expect(said).toContain('rings not recorded')
  expect(scaleNote(drawn)).toMatch(/^Not to scale: bore not measured/)
})
