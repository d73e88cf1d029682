import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitExponential } from './exponential.ts'
import type { KnownLifetime } from './lifetime.ts'

const ended = (at: number): KnownLifetime => ({ kind: 'ended', at })
const going = (at: number): KnownLifetime => ({ kind: 'going', at })
const between = (after: number, before: number): KnownLifetime => ({ kind: 'between', after, before })

function fitOf(lives: readonly KnownLifetime[]) {
  const fit = fitExponential({ lives, confidence: 0.95 })
  if (!fit.ok) throw new Error(fit.problem.detail)
  return fit
}

describe('exponential fit', () => {
  it('2 ends in 3 + 5 + 12 = 20: mean 10, likelihood -2 ln 10 - 2, variance of ln mean 1/2', () => {
    const fit = fitOf([ended(3), ended(5), going(12)])
    expect(fit.mean).toBeCloseTo(10, 12)
    expect(fit.logLikelihood).toBeCloseTo(-2 * Math.log(10) - 2, 12)
    expect(fit.aic).toBeCloseTo(2 + 4 * Math.log(10) + 4, 12)
    expect(fit.logMeanVariance).toBeCloseTo(0.5, 12)
    expect(fit.upper / fit.mean).toBeCloseTo(Math.exp(1.959963984540054 * Math.SQRT1_2), 10)
  })

  it('3 of 4 dead at the one look at 7: mean 7 / ln 4', () => {
    expect(fitOf([between(0, 7), between(0, 7), between(0, 7), going(7)]).mean).toBeCloseTo(7 / Math.log(4), 12)
  })

  it.each([
    [[], 'lifetimes/none-ended'],
    [[going(3)], 'lifetimes/none-ended'],
    [[between(0, 3), between(0, 5)], 'exponential/no-maximum'],
    [[ended(-3)], 'lifetimes/not-a-time'],
    [[between(3, 2)], 'lifetimes/not-an-interval'],
  ])('refuses %j: %s', (lives, code) => {
    expect(fitExponential({ lives, confidence: 0.95 })).toMatchObject({ ok: false, problem: { code, field: 'lives' } })
  })

  it('is time over ends where ends are known, at any scale', () => {
    const times = fc.array(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 20 })
    fc.assert(
      fc.property(times, times, fc.integer({ min: -100, max: 100 }), (ends, goings, power) => {
        const scale = 10 ** power
        const fit = fitOf([...ends.map((at) => ended(at * scale)), ...goings.map((at) => going(at * scale))])
        const total = [...ends, ...goings].reduce((sum, time) => sum + time, 0)
        expect(fit.mean / (total * scale) / (1 / ends.length)).toBeCloseTo(1, 10)
      }),
    )
  })
})
