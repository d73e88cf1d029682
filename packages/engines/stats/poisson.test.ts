import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { poissonLimits } from './poisson.ts'

describe('exact limits of a rate', () => {
  it('no event in 10 valve years, 90 %: 0 to ln 20 / 10 = 0.2996 a year', () => {
    const limits = poissonLimits({ events: 0, exposure: 10, confidence: 0.9 })
    expect(limits).toMatchObject({ ok: true, rate: 0, lower: 0 })
    expect(limits.ok && limits.upper).toBeCloseTo(Math.log(20) / 10, 14)
  })

  it('one event, 95 %: the lower limit is -ln 0.975', () => {
    const limits = poissonLimits({ events: 1, exposure: 1, confidence: 0.95 })
    expect(limits.ok && limits.lower).toBeCloseTo(-Math.log(0.975), 14)
  })

  it.each([
    [{ events: 1.5, exposure: 1, confidence: 0.9 }, 'number/not-a-count', 'events'],
    [{ events: -1, exposure: 1, confidence: 0.9 }, 'number/not-a-count', 'events'],
    [{ events: 1, exposure: 0, confidence: 0.9 }, 'number/not-positive', 'exposure'],
    [{ events: 1, exposure: NaN, confidence: 0.9 }, 'number/not-positive', 'exposure'],
    [{ events: 1, exposure: 1, confidence: 95 }, 'confidence/not-a-share', 'confidence'],
    [{ events: 1e9, exposure: 1e-305, confidence: 0.9 }, 'number/out-of-range', 'exposure'],
  ])('refuses %j: %s', (input, code, field) => {
    expect(poissonLimits(input)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('hold the rate between them, widen with confidence, scale with exposure', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (events, confidence) => {
        const narrow = poissonLimits({ events, exposure: 1, confidence })
        const wide = poissonLimits({ events, exposure: 1, confidence: (1 + confidence) / 2 })
        const shared = poissonLimits({ events, exposure: 4, confidence })
        if (!narrow.ok || !wide.ok || !shared.ok) throw new Error('refused')
        expect(narrow.upper).toBeGreaterThan(narrow.rate)
        // A count has its median just above it: a lower limit of small confidence may pass it, never by one.
        expect(narrow.lower).toBeLessThan(narrow.rate + 1)
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower)
        expect(wide.upper).toBeGreaterThan(narrow.upper)
        expect(shared.upper * 4).toBeCloseTo(narrow.upper, 9)
      }),
    )
  })

  it('gives finite figures or a named problem for anything', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (events, exposure, confidence) => {
        const limits = poissonLimits({ events, exposure, confidence })
        if (limits.ok) expect([limits.rate, limits.lower, limits.upper].every(Number.isFinite)).toBe(true)
        else expect(limits.problem.detail).not.toBe('')
      }),
    )
  })
})
