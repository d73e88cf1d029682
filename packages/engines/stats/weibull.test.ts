import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitExponential } from './exponential.ts'
import type { KnownLifetime } from './lifetime.ts'
import { lifetimeLikelihood } from './lifetime-likelihood.ts'
import { fitWeibull, weibullQuantile } from './weibull.ts'

const ended = (at: number): KnownLifetime => ({ kind: 'ended', at })
const going = (at: number): KnownLifetime => ({ kind: 'going', at })
const between = (after: number, before: number): KnownLifetime => ({ kind: 'between', after, before })

// As people write them, to a thousandth: lives a rounding apart have no shape worth the name, and any large one will do.
const times = fc.integer({ min: 1000, max: 1_000_000 }).map((thousandths) => thousandths / 1000)
const known = fc.oneof(
  times.map(ended),
  times.map(going),
  fc
    .tuple(
      fc.integer({ min: 0, max: 500_000 }).map((thousandths) => thousandths / 1000),
      times,
    )
    .map(([after, width]) => between(after, after + width)),
)
const someLives = fc.array(known, { minLength: 1, maxLength: 30 })

function fitOf(lives: readonly KnownLifetime[]) {
  const fit = fitWeibull({ lives, confidence: 0.95 })
  if (!fit.ok) throw new Error(fit.problem.detail)
  return fit
}

describe('likelihood of lifetimes', () => {
  it('shape 1, scale 1: ended at 2 gives -2, going at 3 gives -3, between 1 and 2 gives ln(e^-1 - e^-2)', () => {
    const at = { location: 0, logSpread: 0 }
    expect(lifetimeLikelihood([ended(2)], at).value).toBeCloseTo(-2, 15)
    expect(lifetimeLikelihood([going(3)], at).value).toBeCloseTo(-3, 15)
    expect(lifetimeLikelihood([between(1, 2)], at).value).toBeCloseTo(Math.log(Math.exp(-1) - Math.exp(-2)), 14)
    expect(lifetimeLikelihood([between(0, 2)], at).value).toBeCloseTo(Math.log(1 - Math.exp(-2)), 14)
  })

  it('slopes and curvatures are those of small differences', () => {
    fc.assert(
      fc.property(
        someLives,
        fc.double({ min: 4, max: 7, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (lives, location, logSpread) => {
          const step = 1e-5
          const here = lifetimeLikelihood(lives, { location, logSpread })
          const beside = (move: number, turn: number) =>
            lifetimeLikelihood(lives, { location: location + move, logSpread: logSpread + turn })
          const slope = (of: 'value' | 'byLocation' | 'byLogSpread', move: number, turn: number) =>
            (beside(move, turn)[of] - beside(-move, -turn)[of]) / (2 * step)
          const agrees = (exact: number, rough: number) => {
            fc.pre(Number.isFinite(rough) && Math.abs(exact) < 1e5)
            expect(Math.abs(exact - rough)).toBeLessThan(1e-4 * (1 + Math.abs(exact) + Math.abs(here.value)))
          }
          agrees(here.byLocation, slope('value', step, 0))
          agrees(here.byLogSpread, slope('value', 0, step))
          agrees(here.byLocationTwice, slope('byLocation', step, 0))
          agrees(here.byLogSpreadTwice, slope('byLogSpread', 0, step))
          agrees(here.byBoth, slope('byLocation', 0, step))
          agrees(here.byBoth, slope('byLogSpread', step, 0))
        },
      ),
    )
  })
})

describe('Weibull fit', () => {
  it('ended at 1 and e: ln t 0 and 1, spread 0.416778, shape 2.399357 solves Σ z e^z = Σ e^z (1 + Σz/n)', () => {
    const { shape, scale } = fitOf([ended(1), ended(Math.exp(1))])
    // The two equations of the likelihood, by hand: mean of t^shape is scale^shape; Σ t^k ln t / Σ t^k - 1/k = mean of ln t.
    expect((1 + Math.exp(shape)) / 2).toBeCloseTo(scale ** shape, 10)
    expect(Math.exp(shape) / (1 + Math.exp(shape)) - 1 / shape).toBeCloseTo(0.5, 12)
  })

  it('very narrow intervals are as good as ends', () => {
    const ages = [12, 30, 41, 55, 70, 98]
    const narrow = fitOf(ages.map((age) => between(age - 1e-4, age + 1e-4)))
    const exact = fitOf(ages.map(ended))
    expect(narrow.shape).toBeCloseTo(exact.shape, 6)
    expect(narrow.scale).toBeCloseTo(exact.scale, 5)
    expect(narrow.covariance.logScale).toBeCloseTo(exact.covariance.logScale, 6)
  })

  it.each([
    [[], 'lifetimes/none-ended'],
    [[going(5)], 'lifetimes/none-ended'],
    [[ended(0)], 'lifetimes/not-a-time'],
    [[ended(NaN)], 'lifetimes/not-a-time'],
    [[ended(1), between(5, 5)], 'lifetimes/not-an-interval'],
    [[ended(1), between(-1, 5)], 'lifetimes/not-an-interval'],
    [[ended(1), between(1, Infinity)], 'lifetimes/not-an-interval'],
    [[ended(4), ended(4), ended(4)], 'weibull/no-maximum'],
    [[ended(4)], 'weibull/no-maximum'],
    [[between(0, 4), between(0, 9)], 'weibull/no-maximum'],
  ])('refuses %j: %s', (lives, code) => {
    expect(fitWeibull({ lives, confidence: 0.95 })).toMatchObject({ ok: false, problem: { code, field: 'lives' } })
  })

  it('the quantile of the fit: limits about it, 63.2 % at the scale with its limits', () => {
    const fit = fitOf([10, 20, 30, 45, 60].map(ended))
    const quantile = weibullQuantile({ fit, share: 1 - Math.exp(-1), confidence: 0.95 })
    if (!quantile.ok) throw new Error(quantile.problem.detail)
    expect(quantile.age).toBeCloseTo(fit.scale, 9)
    expect([quantile.lower, quantile.upper].map((age) => age.toFixed(8))).toEqual([
      fit.scaleLower.toFixed(8),
      fit.scaleUpper.toFixed(8),
    ])
    for (const share of [0, 1, NaN, -1])
      expect(weibullQuantile({ fit, share, confidence: 0.95 })).toMatchObject({ ok: false, problem: { field: 'share' } })
  })

  it('in weeks and in days it is the same fit; figures are finite or a named problem', () => {
    fc.assert(
      fc.property(someLives, (lives) => {
        const fit = fitWeibull({ lives, confidence: 0.9 })
        const inDays = fitWeibull({
          lives: lives.map((life) =>
            life.kind === 'between' ? between(life.after * 7, life.before * 7) : { kind: life.kind, at: life.at * 7 },
          ),
          confidence: 0.9,
        })
        if (!fit.ok) return
        expect(Object.values(fit).every((figure) => typeof figure !== 'number' || Number.isFinite(figure))).toBe(true)
        expect(fit.scaleLower < fit.scale && fit.scale < fit.scaleUpper && fit.shapeLower < fit.shape).toBe(true)
        if (!inDays.ok || fit.covariance.logSpread > 10 || fit.shape > 1000) return
        expect(inDays.shape / fit.shape).toBeCloseTo(1, 6)
        expect(inDays.scale / fit.scale / 7).toBeCloseTo(1, 6)
      }),
    )
  })

  it('is the best there is: no likelier place beside it, and not worse than the exponential', () => {
    fc.assert(
      fc.property(someLives, (lives) => {
        const fit = fitWeibull({ lives, confidence: 0.9 })
        const exponential = fitExponential({ lives, confidence: 0.9 })
        if (!fit.ok || !exponential.ok) return
        expect(fit.logLikelihood).toBeGreaterThanOrEqual(exponential.logLikelihood - 1e-9)
        const here = { location: Math.log(fit.scale), logSpread: -Math.log(fit.shape) }
        for (const [move, turn] of [
          [0.01, 0],
          [-0.01, 0],
          [0, 0.01],
          [0, -0.01],
        ] as const) {
          const beside = { location: here.location + move, logSpread: here.logSpread + turn }
          expect(lifetimeLikelihood(lives, beside).value).toBeLessThanOrEqual(fit.logLikelihood + 1e-9)
        }
      }),
    )
  })
})
