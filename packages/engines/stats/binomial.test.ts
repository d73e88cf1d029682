import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exactShareLimits, wilsonShareLimits } from './binomial.ts'

const samples = fc
  .record({ lookedAt: fc.integer({ min: 1, max: 50_000 }), part: fc.double({ min: 0, max: 1, noNaN: true }) })
  .map(({ lookedAt, part }) => ({ lookedAt, found: Math.round(part * lookedAt) }))

describe('limits of a share', () => {
  it('none of 20, 95 %: exact upper 1 - 0.025^(1/20) = 0.1684', () => {
    const limits = exactShareLimits({ found: 0, lookedAt: 20, confidence: 0.95 })
    expect(limits).toMatchObject({ ok: true, share: 0, lower: 0 })
    expect(limits.ok && limits.upper).toBeCloseTo(1 - 0.025 ** (1 / 20), 14)
  })

  it('5 of 10 by score, 95 %: 0.2366 to 0.7634', () => {
    const limits = wilsonShareLimits({ found: 5, lookedAt: 10, confidence: 0.95 })
    expect(limits.ok && [limits.lower.toFixed(4), limits.upper.toFixed(4)]).toEqual(['0.2366', '0.7634'])
  })

  it.each([
    [{ found: 1, lookedAt: 0, confidence: 0.9 }, 'share/none-looked-at', 'lookedAt'],
    [{ found: 4, lookedAt: 3, confidence: 0.9 }, 'share/more-found-than-looked-at', 'found'],
    [{ found: 0.5, lookedAt: 3, confidence: 0.9 }, 'number/not-a-count', 'found'],
    [{ found: 1, lookedAt: NaN, confidence: 0.9 }, 'number/not-a-count', 'lookedAt'],
    [{ found: 1, lookedAt: 3, confidence: 1 }, 'confidence/not-a-share', 'confidence'],
  ])('refuses %j: %s', (sample, code, field) => {
    expect(exactShareLimits(sample)).toMatchObject({ ok: false, problem: { code, field } })
    expect(wilsonShareLimits(sample)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it.each([
    ['exact', exactShareLimits],
    ['score', wilsonShareLimits],
  ])('%s: in order within 0 and 1, mirrored for the missed ones', (_, limitsOf) => {
    fc.assert(
      fc.property(samples, fc.double({ min: 0.5, max: 0.9999, noNaN: true }), ({ found, lookedAt }, confidence) => {
        const limits = limitsOf({ found, lookedAt, confidence })
        const mirrored = limitsOf({ found: lookedAt - found, lookedAt, confidence })
        if (!limits.ok || !mirrored.ok) throw new Error('refused')
        expect(0 <= limits.lower && limits.lower <= limits.share && limits.share <= limits.upper && limits.upper <= 1).toBe(true)
        expect(limits.lower).toBeCloseTo(1 - mirrored.upper, 10)
      }),
    )
  })

  it('gives figures or a named problem for anything', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (found, lookedAt, confidence) => {
        expect(exactShareLimits({ found, lookedAt, confidence }).ok).toBe(wilsonShareLimits({ found, lookedAt, confidence }).ok)
      }),
    )
  })
})
