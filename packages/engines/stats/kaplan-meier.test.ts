import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { atRiskAt, kaplanMeier, type LimitScale, survivalAt } from './kaplan-meier.ts'
import type { Lifetime } from './lifetime.ts'

const ended = (time: number): Lifetime => ({ time, ended: true })
const going = (time: number): Lifetime => ({ time, ended: false })
const scales: LimitScale[] = ['plain', 'log', 'log-log']
const lifetimes = fc.array(fc.record({ time: fc.integer({ min: 0, max: 40 }), ended: fc.boolean() }), {
  minLength: 1,
  maxLength: 60,
})

function curveOf(lives: readonly Lifetime[], scale: LimitScale = 'log') {
  const curve = kaplanMeier({ lives, confidence: 0.95, scale })
  if (!curve.ok) throw new Error(curve.problem.detail)
  return curve
}

describe('Kaplan-Meier', () => {
  it('ends at 1, 3, 3, last seen at 3, 5: 4/5 then 4/5 · 2/4; Greenwood √(1/20 + 2/8) of it', () => {
    const curve = curveOf([ended(1), ended(3), ended(3), going(3), going(5)])
    const [first, second, third] = curve.steps
    expect(first).toMatchObject({ time: 1, atRisk: 5, ended: 1, lastSeen: 0 })
    expect(first!.survival).toBeCloseTo(0.8, 15)
    expect(second).toMatchObject({ time: 3, atRisk: 4, ended: 2, lastSeen: 1 })
    expect(second!.survival).toBeCloseTo(0.4, 15)
    expect(second!.standardError).toBeCloseTo(0.4 * Math.sqrt(0.3), 15)
    expect(third).toMatchObject({ time: 5, atRisk: 1, ended: 0, lastSeen: 1 })
    expect(curve.median).toBe(3)
  })

  it('the median of a level stretch at one half is its middle: ends at 2, 4, 8, 9 give 6', () => {
    expect(curveOf([ended(2), ended(4), ended(8), ended(9)]).median).toBe(6)
  })

  it('no end, no median; the curve stays at 1', () => {
    const curve = curveOf([going(3), going(9)])
    expect([curve.median, curve.medianLower, curve.medianUpper]).toEqual([null, null, null])
    expect(curve.steps.map(({ survival, standardError, lower, upper }) => [survival, standardError, lower, upper])).toEqual([
      [1, 0, 1, 1],
      [1, 0, 1, 1],
    ])
  })

  it('once all have ended there is no error left to tell', () => {
    expect(curveOf([ended(3), ended(4)]).steps.at(-1)).toMatchObject({
      survival: 0,
      standardError: null,
      lower: null,
      upper: null,
    })
  })

  it('tells survival between steps, and the number still watched', () => {
    const lives = [ended(2), going(5), ended(7)]
    const { steps } = curveOf(lives)
    expect([0, 1.9, 2, 6].map((time) => survivalAt(steps, time).toFixed(4))).toEqual(['1.0000', '1.0000', '0.6667', '0.6667'])
    expect([0, 2, 2.1, 5, 7, 8].map((time) => atRiskAt(lives, time))).toEqual([3, 3, 2, 2, 1, 0])
  })

  it.each([
    [{ lives: [], confidence: 0.95 }, 'lifetimes/none', 'lives'],
    [{ lives: [ended(-1)], confidence: 0.95 }, 'lifetimes/not-a-time', 'lives'],
    [{ lives: [ended(NaN)], confidence: 0.95 }, 'lifetimes/not-a-time', 'lives'],
    [{ lives: [going(Infinity)], confidence: 0.95 }, 'lifetimes/not-a-time', 'lives'],
    [{ lives: [ended(1)], confidence: 1.5 }, 'confidence/not-a-share', 'confidence'],
  ])('refuses %j: %s', (input, code, field) => {
    expect(kaplanMeier({ ...input, scale: 'log' })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('without censoring it is the share of lives that last longer', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(20), { minLength: 1, maxLength: 40 }), (times) => {
        const { steps } = curveOf(times.map(ended))
        for (const { time, survival } of steps)
          expect(survival).toBeCloseTo(times.filter((other) => other > time).length / times.length, 12)
      }),
    )
  })

  it.each(scales)('limits on the %s scale lie about the curve within 0 and 1, and the curve falls', (scale) => {
    fc.assert(
      fc.property(lifetimes, (lives) => {
        let before = 1
        for (const { survival, lower, upper } of curveOf(lives, scale).steps) {
          expect(survival).toBeLessThanOrEqual(before)
          before = survival
          if (lower !== null && upper !== null) {
            expect(0 <= lower && upper <= 1).toBe(true)
            expect(lower <= survival + 1e-12 && survival <= upper + 1e-12).toBe(true)
          }
        }
      }),
    )
  })
})
