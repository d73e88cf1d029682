import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chiSquaredAbove, chiSquaredBelow, chiSquaredQuantile, chiSquaredUpperQuantile } from './chi-squared.ts'
import { normalDistribution } from './normal.ts'

describe('chi-squared', () => {
  it('two degrees are exponential: 5 % above 2 ln 20 = 5.991', () => {
    expect(chiSquaredAbove(2 * Math.log(20), 2)).toBeCloseTo(0.05, 15)
    expect(chiSquaredUpperQuantile(0.05, 2)).toBeCloseTo(2 * Math.log(20), 13)
  })

  it('one degree is a squared normal number', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 37, noNaN: true }), (x) => {
        expect(chiSquaredAbove(x * x, 1) / (2 * normalDistribution(-x))).toBeCloseTo(1, 11)
      }),
    )
  })

  it('quantiles invert the distribution', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1e4, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.999, noNaN: true }),
        (degrees, p) => {
          expect(chiSquaredBelow(chiSquaredQuantile(p, degrees), degrees)).toBeCloseTo(p, 11)
          expect(chiSquaredAbove(chiSquaredUpperQuantile(p, degrees), degrees)).toBeCloseTo(p, 11)
        },
      ),
    )
  })

  it('is NaN outside its domain', () => {
    expect([chiSquaredBelow(-1, 2), chiSquaredAbove(1, 0), chiSquaredQuantile(2, 2), chiSquaredUpperQuantile(0.5, NaN)]).toEqual([
      NaN,
      NaN,
      NaN,
      NaN,
    ])
  })
})
