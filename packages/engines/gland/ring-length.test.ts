import { inchesToMillimetres, MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { degrees, mm, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BEVEL_ALLOWANCE, ringLength, wrapsOnMandrel } from './ring-length.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const cut = (change: Partial<Parameters<typeof ringLength>[0]> = {}) => {
  const ring = ringLength({ stemDiameter: mm(28), section: mm(8.5), ...change })
  if (!ring.ok) throw new Error(ring.problem.detail)
  return ring
}

describe('a ring', () => {
  it('is pi · (28 + 8.5) = 114.6681 long at mid-width; a butt cut has no offset', () => {
    const ring = cut()
    expect(ring.midLength).toBeCloseTo(114.6681, 4)
    expect(ring).toMatchObject({ cutOffset: 0, edgeLength: ring.midLength, overallLength: ring.midLength })
    expect(ring.wholeSectionLength).toBe(ring.midLength)
  })

  it('skived at 45° each edge keeps its length, and the points lie 8.5 / tan 45° = 8.5 further: 123.1681 overall', () => {
    const ring = cut({ cutAngle: degrees(45) })
    expect(ring.edgeLength).toBeCloseTo(114.6681, 4)
    expect(ring.cutOffset).toBeCloseTo(8.5, 12)
    expect(ring.overallLength).toBeCloseTo(123.1681, 4)
    expect(ring.wholeSectionLength).toBeCloseTo(106.1681, 4)
  })

  it('is bent by 8.5 / 36.5 = 23.3 %: outside pi · 45 = 141.372, inside pi · 28 = 87.965', () => {
    const ring = cut()
    expect(ring.bendingStrain).toBeCloseTo(0.232877, 6)
    expect(ring.outerCircumference).toBeCloseTo(141.3717, 4)
    expect(ring.innerCircumference).toBeCloseTo(87.9646, 4)
  })

  it('is cut longer for bevels by 6.35, or shorter for a gap of 1.6', () => {
    expect(cut({ allowance: BEVEL_ALLOWANCE }).edgeLength).toBeCloseTo(121.0181, 4)
    expect(cut({ allowance: mm(-1.6) }).edgeLength).toBeCloseTo(113.0681, 4)
  })

  it.each([
    ['no stem', { stemDiameter: mm(0) }, 'number/not-positive', 'stemDiameter'],
    ['no section', { section: mm(-0) }, 'number/not-positive', 'section'],
    ['a cut along the cord', { cutAngle: degrees(0) }, 'ring/angle-out-of-range', 'cutAngle'],
    ['a cut past the square', { cutAngle: degrees(90.1) }, 'ring/angle-out-of-range', 'cutAngle'],
    ['a cut longer than the ring', { cutAngle: degrees(4) }, 'ring/cut-longer-than-ring', 'cutAngle'],
    ['an allowance that eats the ring', { allowance: mm(-120) }, 'ring/no-length-left', 'allowance'],
    ['an allowance of kilometres', { allowance: mm(1e6) }, 'number/out-of-range', 'allowance'],
  ])('is not made of %s', (_, change, code, field) => {
    expect(ringLength({ stemDiameter: mm(28), section: mm(8.5), ...change })).toMatchObject({ problem: { code, field } })
  })

  it('is finite or refused with a name, whatever the doubles', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, anyNumber, (stemDiameter, section, cutAngle, allowance) => {
        const ring = ringLength({ stemDiameter, section, cutAngle, allowance } as never)
        if (!ring.ok) {
          expect(ring.problem.code).toMatch(/\w\/\w/)
          return
        }
        for (const value of Object.values(ring)) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
      }),
    )
  })

  const length = fc.double({ min: 3, max: 300, noNaN: true })
  const angle = fc.double({ min: 20, max: 90, noNaN: true })

  it('scales with its size, is the same from inches, and gets longer overall as the cut gets flatter', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 3, max: 25, noNaN: true }), angle, angle, (stem, section, one, other) => {
        const at = (size: number, cutAngle: number) =>
          cut({ stemDiameter: mm(stem * size), section: mm(section * size), cutAngle: degrees(cutAngle) })
        expect(at(2, one).overallLength).toBeCloseTo(2 * at(1, one).overallLength, 6)
        const inches = cut({ stemDiameter: inchesToMillimetres(stem), section: inchesToMillimetres(section) })
        expect(inches.midLength / MILLIMETRES_PER_INCH).toBeCloseTo(at(1, 90).midLength, 9)
        if (one < other) expect(at(1, one).overallLength).toBeGreaterThanOrEqual(at(1, other).overallLength)
      }),
    )
  })

  it('has its middle half way: edge is the mean of overall and whole section, mid the mean of inner and outer', () => {
    fc.assert(
      fc.property(length, angle, (stem, cutAngle) => {
        const ring = cut({ stemDiameter: mm(stem), section: mm(3), cutAngle: degrees(cutAngle) })
        expect((ring.overallLength + ring.wholeSectionLength) / 2).toBeCloseTo(ring.edgeLength, 9)
        expect((ring.innerCircumference + ring.outerCircumference) / 2).toBeCloseTo(ring.midLength, 9)
        expect(ring.midLength * (1 + ring.bendingStrain)).toBeCloseTo(ring.outerCircumference, 8)
      }),
    )
  })
})

describe('wraps on the mandrel', () => {
  it('are one more than the rings: 5 + 1', () => expect(wrapsOnMandrel(5)).toEqual({ ok: true, wraps: 6 }))

  it.each([0, -1, 2.5, Number.NaN, Infinity, 20_000])('not of %s rings', (rings) => {
    expect(wrapsOnMandrel(rings)).toMatchObject({ ok: false, problem: { code: 'number/not-a-count', field: 'rings' } })
  })
})

// @ts-expect-error a bare number is no angle
ringLength({ stemDiameter: mm(28), section: mm(8), cutAngle: 45 })
// @ts-expect-error turns are no angle of a cut
ringLength({ stemDiameter: mm(28), section: mm(8), cutAngle: turns(0.125) })
