import { degrees, mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { cordDrawing } from './cord.ts'
import type { Drawing, Paint, PathShape } from './drawing.ts'
import { loadedGapDrawing } from './loaded-gap.ts'
import { topUpDrawing } from './top-up.ts'
import { wornPartsDrawing } from './worn-parts.ts'

const ends = ({ d }: PathShape) =>
  [...d.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map((match) => ({ x: Number(match[1]), y: Number(match[2]) }))
const paths = ({ shapes }: Drawing, paint: Paint) =>
  shapes.filter((shape): shape is PathShape => shape.kind === 'path' && shape.paint === paint)
const xs = (shape: PathShape) => ends(shape).map(({ x }) => x)
const ys = (shape: PathShape) => ends(shape).map(({ y }) => y)
const spread = (values: number[]) => Math.max(...values) - Math.min(...values)
const words = ({ shapes }: Drawing) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []))

describe('the lengths between the corners of a ring', () => {
  const cord = { ringLength: mm(100), section: mm(8), cutAngle: degrees(45), room: 1000, perMillimetre: 2, isWithCorners: true }

  it('are a lean longer from point to point, and a lean shorter between the inner corners', () => {
    expect(paths(cordDrawing(cord), 'dim').map((dimension) => spread(xs(dimension)) / 2)).toEqual(
      [100, 108, 92].map((length) => expect.closeTo(length, 3) as number),
    )
    expect(cordDrawing(cord).says).toContain('108.0 mm from point to point, 92.0 mm between the inner corners')
  })

  it('are not drawn where the ends are square, nor the inner ones where the cut leans past them', () => {
    expect(paths(cordDrawing({ ...cord, cutAngle: degrees(90) }), 'dim')).toHaveLength(1)
    expect(paths(cordDrawing({ ...cord, ringLength: mm(40), cutAngle: degrees(10) }), 'dim')).toHaveLength(2)
  })
})

describe('the follower after loading', () => {
  const loaded = { gapLeft: mm(10), gapRight: mm(6), expectedGap: mm(8), allowed: mm(2), verdict: 'tilted', room: 358 }

  it('stands at its gap on each side, and in dashes at the one expected', () => {
    const drawing = loadedGapDrawing(loaded)
    const [left, right] = paths(drawing, 'dim').map((dimension) => spread(ys(dimension)))
    const face = Math.min(...ys(paths(drawing, 'steel out')[0]!))
    const expected = face - ys(paths(drawing, 'ghost')[0]!)[0]!
    expect(right! / left!).toBeCloseTo(0.6, 4)
    expect(expected / left!).toBeCloseTo(0.8, 4)
    const flange = paths(drawing, 'steel2 out').map((half) => ends(half)[2]!)
    expect(flange.map(({ y }) => (face - y) / left!)).toEqual([expect.closeTo(1, 4), expect.closeTo(0.6, 4)])
    expect(spread(paths(drawing, 'hair').slice(0, 1).flatMap(ys)) / left!).toBeCloseTo(0.4, 4)
  })

  it('has its verdict in red lead unless it is good, and a side that was not read has no figure', () => {
    expect(words(loadedGapDrawing(loaded)).find(({ says }) => says === 'tilted')?.paint).toBe('hot')
    const good = loadedGapDrawing({ ...loaded, gapRight: null, verdict: 'good' })
    expect(words(good).find(({ says }) => says === 'good')?.paint).toBe('ink')
    expect(paths(good, 'dim')).toHaveLength(1)
    expect(good.says).toContain('gap right not read')
  })
})

describe('one ring more', () => {
  const gland = { followerEntry: mm(17), section: mm(8), leastEngagement: mm(3.2), room: 358 }

  it('leaves the nose a section less of the box, to one scale with the ring and the least', () => {
    const drawing = topUpDrawing(gland)
    const [now, then] = paths(drawing, 'dim').map((dimension) => spread(ys(dimension)))
    expect(then! / now!).toBeCloseTo(9 / 17, 4)
    const ring = paths(drawing, 'pack out').find(({ isDashed }) => isDashed)!
    expect(spread(ys(ring)) / now!).toBeCloseTo(8 / 17, 4)
    const face = Math.min(...ys(paths(drawing, 'steel out')[0]!))
    expect((ys(paths(drawing, 'hotline')[0]!)[0]! - face) / now!).toBeCloseTo(3.2 / 17, 4)
    expect(drawing.width).toBeLessThanOrEqual(358)
  })

  it('that leaves the nose nothing says so and stays on the drawing', () => {
    const drawing = topUpDrawing({ ...gland, followerEntry: mm(5) })
    expect(words(drawing).find(({ says }) => says === 'none left')?.paint).toBe('hot')
    expect(Math.min(...drawing.shapes.flatMap((shape) => (shape.kind === 'path' ? ys(shape) : [])))).toBeGreaterThanOrEqual(0)
  })
})

describe('worn parts', () => {
  const parts = {
    stemDiameters: [mm(28), mm(27)],
    boreDiameters: [mm(45), mm(46)],
    stemAsNew: mm(28.2),
    boreAsNew: null,
    followerBore: mm(28.4),
    neckBore: mm(29),
    room: 420,
  }
  const drawing = wornPartsDrawing(parts)
  const [stem] = paths(drawing, 'paperfill out')
  const [wall] = paths(drawing, 'steel out')
  const thinnest = ends(stem!)[1]!.x
  /** Px for a millimetre of radius, by the widest space. */
  const scale =
    (Math.max(
      ...ends(wall!)
        .slice(0, 4)
        .map(({ x }) => x),
    ) -
      thinnest) /
    ((46 - 27) / 2)

  it('have slits at follower and bottom as wide as they are, to one scale with the space', () => {
    const slits = paths(drawing, 'steel2 out').map((collar) => (Math.min(...xs(collar)) - thinnest) / scale)
    expect(slits).toEqual([expect.closeTo(0.7, 3), expect.closeTo(1, 3)])
  })

  it('step at each diameter measured, with the part as new in dashes', () => {
    expect((Math.max(...xs(stem!)) - thinnest) / scale).toBeCloseTo(0.5, 3)
    expect((xs(paths(drawing, 'ghost')[0]!)[0]! - thinnest) / scale).toBeCloseTo(0.6, 3)
    expect(paths(drawing, 'ghost')).toHaveLength(1)
  })

  it('leave out a hole nobody measured, and say so', () => {
    const unknown = wornPartsDrawing({ ...parts, followerBore: null })
    expect(paths(unknown, 'steel2 out')).toHaveLength(1)
    expect(words(unknown).map(({ says }) => says)).toContain('follower not measured')
  })
})

it.each([288, 358, 700])('every drawing keeps to a room of %i px', (room) => {
  const drawings = [
    loadedGapDrawing({ gapLeft: mm(0), gapRight: mm(180), expectedGap: mm(0), allowed: mm(0), verdict: 'tilted', room }),
    topUpDrawing({ followerEntry: mm(0.4), section: mm(40), leastEngagement: mm(3), room }),
    // Nobody has these: as typed with a slip.
    wornPartsDrawing({
      stemDiameters: [mm(10)],
      boreDiameters: [mm(300)],
      stemAsNew: mm(250),
      boreAsNew: mm(900),
      followerBore: mm(900),
      neckBore: null,
      room,
    }),
  ]
  for (const { width, height, shapes } of drawings) {
    expect(width).toBeLessThanOrEqual(room)
    for (const { x, y } of shapes.flatMap((shape) => (shape.kind === 'path' ? ends(shape) : []))) {
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(width)
      expect(y).toBeLessThanOrEqual(height)
    }
  }
})
