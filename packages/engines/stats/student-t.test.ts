import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalQuantile } from './normal.ts'
import { studentDistribution, studentQuantile } from './student-t.ts'

const degrees = fc.double({ min: -1, max: 12, noNaN: true }).map((power) => 10 ** power)
const tail = fc.oneof(
  fc.double({ min: 1e-9, max: 0.5, noNaN: true }),
  fc.double({ min: -20, max: -1, noNaN: true }).map((power) => 10 ** power),
)

describe('Student t', () => {
  it('one degree is 1/2 + atan(t)/π: 3/4 at 1; two: t = 1/√2·... 0.788675 at 1', () => {
    expect(studentDistribution(1, 1)).toBeCloseTo(0.75, 15)
    expect(studentDistribution(1, 2)).toBeCloseTo(0.5 + 0.5 / Math.sqrt(3), 15)
    expect(studentQuantile(0.75, 1)).toBeCloseTo(1, 14)
  })

  it('ends and domain', () => {
    expect([-Infinity, 0, Infinity].map((t) => studentDistribution(t, 3))).toEqual([0, 0.5, 1])
    expect([0, 0.5, 1].map((p) => studentQuantile(p, 3))).toEqual([-Infinity, 0, Infinity])
    expect([studentDistribution(NaN, 3), studentDistribution(1, 0), studentDistribution(1, NaN)]).toEqual([NaN, NaN, NaN])
    expect([studentQuantile(-0.1, 3), studentQuantile(1.1, 3), studentQuantile(0.3, -1)]).toEqual([NaN, NaN, NaN])
  })

  it('becomes normal', () => {
    expect(studentQuantile(0.975, Infinity)).toBe(normalQuantile(0.975))
    expect(studentQuantile(1e-30, 1e15)).toBeCloseTo(normalQuantile(1e-30), 12)
  })

  it('joins on to the transformed normal at a hundred thousand degrees', () => {
    for (const t of [-37, -12, -2, -0.01, 3]) {
      const step = studentDistribution(t, 1e5) / studentDistribution(t, 99_999.9999999)
      expect(Math.abs(step - 1)).toBeLessThan(1e-11)
    }
  })

  it('the quantile inverts the distribution and is symmetric', () => {
    fc.assert(
      fc.property(degrees, tail, (degreesOfFreedom, p) => {
        const t = studentQuantile(p, degreesOfFreedom)
        fc.pre(Number.isFinite(t))
        expect(Math.abs(studentDistribution(t, degreesOfFreedom) / p - 1)).toBeLessThan(1e-10)
        if (p > 0.01) expect(studentQuantile(1 - p, degreesOfFreedom)).toBeCloseTo(-t, 8 - Math.log10(1 + Math.abs(t)))
      }),
      { numRuns: 300 },
    )
  })

  it('is a chance and rises, whatever it is given', () => {
    fc.assert(
      fc.property(degrees, fc.double({ noNaN: true }), fc.double({ noNaN: true }), (degreesOfFreedom, one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one]
        const below = studentDistribution(low, degreesOfFreedom)
        expect(below >= 0 && below <= 1).toBe(true)
        expect(below).toBeLessThanOrEqual(studentDistribution(high, degreesOfFreedom) + 1e-12)
      }),
    )
  })
})
