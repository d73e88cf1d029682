import { degrees, megapascals, mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { cordDrawing } from './cord.ts'
import type { Drawing, PathShape } from './drawing.ts'
import { ringSetDrawing } from './ring-set.ts'
import { sectionFitDrawing } from './section-fit.ts'
import { stressProfileDrawing } from './stress-profile.ts'

/** The x of every point of a path made of M, L and Z. */
const xs = ({ d }: PathShape) => [...d.matchAll(/[ML]([-\d.]+) /g)].map((match) => Number(match[1]))
const ys = ({ d }: PathShape) => [...d.matchAll(/[ML][-\d.]+ ([-\d.]+)/g)].map((match) => Number(match[1]))
const paths = (drawing: Drawing, paint: string) =>
  drawing.shapes.filter((shape): shape is PathShape => shape.kind === 'path' && shape.paint === paint)
const spread = (values: number[]) => Math.max(...values) - Math.min(...values)

describe('the cord', () => {
  const cord = { ringLength: mm(114.7), section: mm(8.5), cutAngle: degrees(45), room: 1000, perMillimetre: 2 }

  it('is drawn to scale: 114.7 mm between the cuts and 8.5 mm of lean at 45°', () => {
    const drawing = cordDrawing(cord)
    expect(spread(xs(paths(drawing, 'pack out')[0]!))).toBeCloseTo((114.7 + 8.5) * 2, 2)
    expect(spread(ys(paths(drawing, 'pack out')[0]!))).toBeCloseTo(8.5 * 2, 2)
    expect(spread(xs(paths(drawing, 'dim')[0]!))).toBeCloseTo(114.7 * 2, 2)
  })

  it('ends square for a butt cut', () => {
    expect(spread(xs(paths(cordDrawing({ ...cord, cutAngle: degrees(90) }), 'pack out')[0]!))).toBeCloseTo(114.7 * 2, 2)
  })

  it('is broken where it does not fit, and says so', () => {
    const drawing = cordDrawing({ ...cord, room: 120 })
    expect(paths(drawing, 'pack out')).toHaveLength(2)
    expect(drawing.says).toContain('drawn broken')
    expect(drawing.width).toBeLessThanOrEqual(120.001)
  })
})

it('a section over its space is drawn over the wall, with the wall marked; one that fits is not', () => {
  const fit = (size: number) =>
    sectionFitDrawing({ boxBore: mm(45), stemDiameter: mm(28), sections: [{ designation: 'x', size: mm(size) }], room: 400 })
  expect(paths(fit(9), 'hotline')).toHaveLength(1)
  expect(paths(fit(8), 'hotline')).toHaveLength(0)
  const [square] = paths(fit(8), 'pack out')
  expect(spread(xs(square!))).toBeCloseTo(spread(ys(square!)), 6)
})

it('a ring set shows its rings, what fills the box under them, and the gap to scale', () => {
  const drawing = ringSetDrawing({
    boxDepth: mm(60),
    section: mm(8),
    rings: 5,
    consolidatedHeight: mm(30),
    expectedGap: mm(12),
    takeUp: mm(10),
    noseLength: mm(30),
    bottomBush: mm(6),
    lanternRing: mm(0),
    spacer: mm(4),
    room: 500,
  })
  expect(paths(drawing, 'pack out')).toHaveLength(5)
  expect(paths(drawing, 'plain out')).toHaveLength(2)
  const tops = paths(drawing, 'pack out').map((ring) => Math.min(...ys(ring)))
  const rise = tops.slice(1).map((top, index) => top - tops[index]!)
  expect(new Set(rise.map((step) => step.toFixed(2))).size).toBe(1)
  expect(rise[0]).toBeGreaterThan(0)
  const [gap, depth] = paths(drawing, 'dim').map((dimension) => spread(ys(dimension)))
  expect(gap! / depth!).toBeCloseTo(12 / 60, 3)
  // The follower comes down by what loading takes up.
  const [loaded] = paths(drawing, 'steel2 out')
  const [loose] = paths(drawing, 'ghost')
  expect((Math.max(...ys(loaded!)) - Math.max(...ys(loose!))) / depth!).toBeCloseTo(10 / 60, 3)
  expect(Math.min(...ys(loose!))).toBeGreaterThanOrEqual(0)
})

it('stress falls down the set as long as its bars: 20, 10, 5 MPa', () => {
  const drawing = stressProfileDrawing({ stresses: [20, 10, 5].map((stress) => megapascals(stress)), room: 600 })
  const lengths = paths(drawing, 'pack out').map((bar) => spread(xs(bar)))
  expect(lengths[1]! / lengths[0]!).toBeCloseTo(0.5, 6)
  expect(lengths[2]! / lengths[0]!).toBeCloseTo(0.25, 6)
})
