import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gammaAbove, gammaBelow, gammaQuantile, gammaUpperQuantile } from './gamma.ts'
import { logGamma, logGammaOfOnePlus, logLessRise, stirlingRest } from './log-gamma.ts'

/** Positive numbers of every size between two powers of ten. */
const sized = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true }).map((power) => 10 ** power)
const shapes = sized(-6, 10)
const chances = fc.oneof(fc.double({ min: 1e-12, max: 1, noNaN: true }), sized(-300, 0))

describe('log-gamma', () => {
  it('ln 0! = 0, ln 4! = ln 24, ln 20! = 42.335616', () => {
    expect([logGamma(1), logGamma(2)]).toEqual([0, 0])
    expect(logGamma(5)).toBeCloseTo(Math.log(24), 14)
    expect(logGamma(21)).toBeCloseTo(42.335616460753485, 12)
  })

  it('is NaN for 0 and below', () => expect([0, -1, NaN].map(logGamma)).toEqual([NaN, NaN, NaN]))

  it('grows by ln x from x to x + 1, across every seam of its forms', () => {
    fc.assert(
      fc.property(fc.oneof(sized(-3, 3), fc.constantFrom(0.5, 1.5, 2.5, 11, 11.5, 12)), (x) => {
        const gained = logGamma(x + 1) - logGamma(x)
        expect(Math.abs(gained - Math.log(x))).toBeLessThan(1e-14 * (10 + Math.abs(logGamma(x + 1))))
      }),
    )
  })

  it('its rest and its form near 1 agree with it', () => {
    fc.assert(
      fc.property(sized(-3, 2), (x) => {
        expect(logGammaOfOnePlus(x)).toBeCloseTo(logGamma(1 + x), 10)
        const stirling = (x - 0.5) * Math.log(x) - x + Math.log(2 * Math.PI) / 2
        expect(stirling + stirlingRest(x)).toBeCloseTo(logGamma(x), 10)
      }),
    )
  })

  it('ln(1 + t) - t is -t²/2 for a small t, and goes on smoothly at its seam', () => {
    expect(logLessRise(1 + 1e-9, 1e-9) / -5e-19).toBeCloseTo(1, 8)
    expect(logLessRise(1.25, 0.25)).toBeCloseTo(Math.log(1.25) - 0.25, 15)
    expect(logLessRise(0.75, -0.25)).toBeCloseTo(Math.log(0.75) + 0.25, 15)
  })
})

describe('incomplete gamma', () => {
  it('shape 1 is exponential: e^-2 above 2; shape 3: 1 - e^-2 (1 + 2 + 2) = 0.32332 below 2', () => {
    expect(gammaAbove(1, 2)).toBeCloseTo(Math.exp(-2), 15)
    expect(gammaBelow(3, 2)).toBeCloseTo(0.3233235838169366, 15)
  })

  it('is NaN outside its domain and nowhere else', () => {
    for (const [shape, x] of [
      [0, 1],
      [-1, 1],
      [NaN, 1],
      [Infinity, 1],
      [1, -1],
      [1, NaN],
    ] as const)
      expect([gammaBelow(shape, x), gammaAbove(shape, x)]).toEqual([NaN, NaN])
    expect([gammaQuantile(1, -0.1), gammaQuantile(1, 1.1), gammaQuantile(0, 0.5), gammaUpperQuantile(1, NaN)]).toEqual([
      NaN,
      NaN,
      NaN,
      NaN,
    ])
    expect([gammaBelow(2, 0), gammaBelow(2, Infinity), gammaAbove(2, 0), gammaAbove(2, Infinity)]).toEqual([0, 1, 1, 0])
    expect([gammaQuantile(2, 0), gammaQuantile(2, 1), gammaUpperQuantile(2, 0), gammaUpperQuantile(2, 1)]).toEqual([
      0,
      Infinity,
      Infinity,
      0,
    ])
  })

  it('both tails make one, and are chances', () => {
    fc.assert(
      fc.property(sized(-300, 300), sized(-300, 300), (shape, x) => {
        const [below, above] = [gammaBelow(shape, x), gammaAbove(shape, x)]
        expect(below >= 0 && below <= 1 && above >= 0 && above <= 1).toBe(true)
        expect(below + above).toBeCloseTo(1, 12)
      }),
      { numRuns: 500 },
    )
  })

  it('follows P(shape + 1, x) = P(shape, x) - x^shape e^-x / Γ(shape + 1)', () => {
    fc.assert(
      fc.property(sized(-2, 2), sized(-2, 2.3), (shape, x) => {
        const height = Math.exp(shape * Math.log(x) - x - logGamma(shape + 1))
        expect(gammaBelow(shape + 1, x)).toBeCloseTo(gammaBelow(shape, x) - height, 12)
      }),
    )
  })

  it('the vast shapes join on: no step at 1e8', () => {
    for (const away of [-30, -3, -0.5, 0, 0.5, 3, 30]) {
      const x = 1e8 + away * 1e4
      expect(gammaBelow(1e8, x) / gammaBelow(99_999_999.99999999, x)).toBeCloseTo(1, 7)
      expect(gammaAbove(1e8, x) / gammaAbove(99_999_999.99999999, x)).toBeCloseTo(1, 7)
    }
  })

  it('quantiles invert it on both sides', () => {
    fc.assert(
      fc.property(shapes, chances, (shape, p) => {
        const x = gammaQuantile(shape, p)
        const upper = gammaUpperQuantile(shape, p)
        // The relative digits of a tail are those of x times how steep the tail is there.
        const blur = 1e-12 + 1e-14 * Math.sqrt(shape) * 40
        if (x > 1e-300 && p < 0.9) expect(Math.abs(gammaBelow(shape, x) / p - 1)).toBeLessThan(blur)
        if (upper > 1e-300 && p < 0.9) expect(Math.abs(gammaAbove(shape, upper) / p - 1)).toBeLessThan(blur)
      }),
      { numRuns: 500 },
    )
  })

  it('quantiles rise with p', () => {
    fc.assert(
      fc.property(shapes, chances, chances, (shape, p, q) => {
        const [low, high] = p < q ? [p, q] : [q, p]
        expect(gammaQuantile(shape, low)).toBeLessThanOrEqual(gammaQuantile(shape, high) * (1 + 1e-12))
      }),
    )
  })
})
