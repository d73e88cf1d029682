import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { betaBelow, betaBelowNearNought, betaQuantile, betaQuantileLogOdds } from './beta.ts'

const sized = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true }).map((power) => 10 ** power)
const shapes = sized(-3, 5)
const share = fc.double({ min: 0, max: 1, noNaN: true })

describe('incomplete beta', () => {
  it('(2, 1) is x²: 0.09 at 0.3; (2, 2) is 3x² - 2x³: 0.216 at 0.3', () => {
    expect(betaBelow({ shapeBelow: 2, shapeAbove: 1, x: 0.3 })).toBeCloseTo(0.09, 15)
    expect(betaBelow({ shapeBelow: 2, shapeAbove: 2, x: 0.3 })).toBeCloseTo(0.216, 15)
  })

  it('(1/2, 1/2) is the arcsine law, 1/3 at a quarter', () => {
    expect(betaBelow({ shapeBelow: 0.5, shapeAbove: 0.5, x: 0.25 })).toBeCloseTo(1 / 3, 15)
  })

  it('is NaN outside its domain only', () => {
    for (const [shapeBelow, shapeAbove, x] of [
      [0, 1, 0.5],
      [1, -1, 0.5],
      [NaN, 1, 0.5],
      [1, Infinity, 0.5],
      [1, 1, -0.1],
      [1, 1, 1.1],
      [1, 1, NaN],
    ] as const) {
      expect(betaBelow({ shapeBelow, shapeAbove, x })).toBeNaN()
      expect(betaQuantile({ shapeBelow, shapeAbove, p: x })).toBeNaN()
    }
    expect(betaQuantileLogOdds({ shapeBelow: 1, shapeAbove: 1, p: 0 })).toBe(-Infinity)
    expect([0, 1].map((p) => betaQuantile({ shapeBelow: 2, shapeAbove: 3, p }))).toEqual([0, 1])
  })

  it('is a chance, and the other tail is that of the exchanged shapes', () => {
    fc.assert(
      fc.property(shapes, shapes, share, (shapeBelow, shapeAbove, x) => {
        const below = betaBelow({ shapeBelow, shapeAbove, x })
        const above = betaBelow({ shapeBelow: shapeAbove, shapeAbove: shapeBelow, x: 1 - x, rest: x })
        expect(below >= 0 && below <= 1).toBe(true)
        expect(below + above).toBeCloseTo(1, 9)
      }),
    )
  })

  it('rises with x', () => {
    fc.assert(
      fc.property(shapes, shapes, share, share, (shapeBelow, shapeAbove, one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one]
        const below = betaBelow({ shapeBelow, shapeAbove, x: low })
        expect(below).toBeLessThanOrEqual(betaBelow({ shapeBelow, shapeAbove, x: high }) + 1e-10)
      }),
    )
  })

  it('the quantile inverts it', () => {
    fc.assert(
      fc.property(sized(-1, 4), sized(-1, 4), fc.oneof(sized(-250, -0.4), share), (shapeBelow, shapeAbove, p) => {
        const x = betaQuantile({ shapeBelow, shapeAbove, p })
        expect(x >= 0 && x <= 1).toBe(true)
        if (x > 1e-290 && p < 0.5) expect(Math.abs(betaBelow({ shapeBelow, shapeAbove, x }) / p - 1)).toBeLessThan(1e-9)
      }),
      { numRuns: 300 },
    )
  })

  it('one term of the series is all of it near nought', () => {
    const shapeBelow = 1.5
    const shapeAbove = 4
    const whole = betaBelow({ shapeBelow, shapeAbove, x: 1e-20 })
    expect(betaBelowNearNought({ shapeBelow, shapeAbove }, Math.log(1e-20)) / whole).toBeCloseTo(1, 12)
  })
})
