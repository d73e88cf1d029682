import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalDensity, normalDistribution, normalQuantile } from './normal.ts'

const anyDouble = fc.oneof(fc.double(), fc.constantFrom(NaN, Infinity, -Infinity, -0))
const deviate = fc.double({ min: -38, max: 38, noNaN: true })
const chance = fc.double({ min: 0, max: 1, noNaN: true })

describe('normal distribution', () => {
  it('0 to 1, 2 and 3 deviations: 34.134, 47.725 and 49.865 per cent', () => {
    expect([1, 2, 3].map((x) => (normalDistribution(x) - 0.5).toFixed(5))).toEqual(['0.34134', '0.47725', '0.49865'])
  })

  it('reaches its ends at the infinities and keeps NaN', () => {
    expect([-Infinity, Infinity, NaN].map(normalDistribution)).toEqual([0, 1, NaN])
    expect([-Infinity, Infinity, NaN].map(normalDensity)).toEqual([0, 0, NaN])
    expect([0, 1, 0.5].map(normalQuantile)).toEqual([-Infinity, Infinity, 0])
    expect([-0.1, 1.1, NaN, Infinity].map(normalQuantile)).toEqual([NaN, NaN, NaN, NaN])
  })

  it('is a chance for any number', () => {
    fc.assert(
      fc.property(anyDouble, (x) => {
        fc.pre(!Number.isNaN(x))
        expect(normalDistribution(x)).toBeGreaterThanOrEqual(0)
        expect(normalDistribution(x)).toBeLessThanOrEqual(1)
        expect(Number.isFinite(normalDensity(x))).toBe(true)
      }),
    )
  })

  it('rises, to the last digits', () => {
    fc.assert(
      fc.property(deviate, deviate, (one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one]
        expect(normalDistribution(low)).toBeLessThanOrEqual(normalDistribution(high) * (1 + 1e-14))
      }),
    )
  })

  it('is symmetric', () => {
    fc.assert(
      fc.property(deviate, (x) => {
        expect(normalDistribution(x)).toBeCloseTo(1 - normalDistribution(-x), 15)
      }),
    )
  })

  it('passes from one form to the other without a step at 2.8', () => {
    const step = normalDistribution(-2.8) / normalDistribution(-2.8 + 4e-16) - 1
    expect(Math.abs(step)).toBeLessThan(1e-14)
  })
})

describe('normal quantile', () => {
  it('inverts the distribution, in the lower tail with all digits', () => {
    fc.assert(
      fc.property(fc.double({ min: -37, max: 5, noNaN: true }), (x) => {
        // A chance near 1 is known to 1e-16 only, and so is what it tells of x.
        const blur = 1e-14 + 2e-16 / normalDensity(x)
        expect(Math.abs(normalQuantile(normalDistribution(x)) - x)).toBeLessThan(x < 0 ? 1e-13 : blur * 4)
      }),
    )
  })

  it('is symmetric and rises', () => {
    fc.assert(
      fc.property(chance, chance, (p, q) => {
        expect(normalQuantile(p / 2) <= 0).toBe(true)
        if (p < q) expect(normalQuantile(p)).toBeLessThanOrEqual(normalQuantile(q))
        const half = Math.round(p * 2 ** 40) / 2 ** 40
        expect(normalQuantile(1 - half) + normalQuantile(half) || 0).toBeCloseTo(0, 12)
      }),
      { examples: [[0, 1]] },
    )
  })
})
