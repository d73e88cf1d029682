import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitPowerLaw, meanTimeBetween, trendTests } from './power-law-process.ts'
import type { WatchedUnit } from './repeat-events.ts'

const unit = (watchedTo: number, ...events: number[]): WatchedUnit => ({ events, watchedTo })
const watch = fc.double({ min: 1, max: 1e4, noNaN: true })
const parts = fc.array(fc.double({ min: 1e-3, max: 0.999, noNaN: true }), { minLength: 2, maxLength: 10 })

describe('power law process', () => {
  it('ages 100/e and 100/e² of 100: exponent 2/3, unbiased 1/3, factor 2 / 100^(2/3)', () => {
    const fit = fitPowerLaw([unit(100, 100 / Math.E, 100 / Math.E ** 2)])
    if (!fit.ok) throw new Error(fit.problem.detail)
    expect(fit.exponent).toBeCloseTo(2 / 3, 13)
    expect(fit.unbiasedExponent).toBeCloseTo(1 / 3, 13)
    expect(fit.factor).toBeCloseTo(2 / 100 ** (2 / 3), 13)
    expect(fit.unbiasedFactor).toBeCloseTo(2 / 100 ** (1 / 3), 13)
  })

  it('one length of watch: N / Σ ln(T / age); and the fit expects as many events as were seen', () => {
    fc.assert(
      fc.property(watch, parts, watch, parts, (first, some, second, others) => {
        const alone = unit(first, ...some.map((part) => part * first))
        const fit = fitPowerLaw([alone])
        if (!fit.ok) throw new Error(fit.problem.detail)
        const logSum = alone.events.reduce((sum, age) => sum + Math.log(first / age), 0)
        expect((fit.exponent * logSum) / some.length).toBeCloseTo(1, 10)
        const both = [alone, unit(second, ...others.map((part) => part * second))]
        const together = fitPowerLaw(both)
        if (!together.ok) throw new Error(together.problem.detail)
        const expected = both.reduce((sum, { watchedTo }) => sum + together.factor * watchedTo ** together.exponent, 0)
        expect(expected / together.events).toBeCloseTo(1, 9)
      }),
    )
  })

  it('mean time between events: 0.01 · 1.5 · √400 a day gives 3.33 days', () => {
    const between = meanTimeBetween({ factor: 0.01, exponent: 1.5, age: 400 })
    expect(between.ok && between.time).toBeCloseTo(1 / 0.3, 12)
    expect(meanTimeBetween({ factor: 0, exponent: 1, age: 1 })).toMatchObject({ ok: false, problem: { field: 'factor' } })
    expect(meanTimeBetween({ factor: 1, exponent: NaN, age: 1 })).toMatchObject({ ok: false, problem: { field: 'exponent' } })
    expect(meanTimeBetween({ factor: 1, exponent: 400, age: 1e-9 })).toMatchObject({ problem: { code: 'number/out-of-range' } })
  })

  it.each([
    [[], 'repeat-events/no-unit'],
    [[unit(5)], 'repeat-events/too-few'],
    [[unit(5, 1)], 'repeat-events/too-few'],
    [[unit(5, 5, 5)], 'repeat-events/all-at-end'],
    [[unit(5, 6, 7)], 'repeat-events/outside-watch'],
    [[unit(NaN, 1, 2)], 'repeat-events/not-an-age'],
  ])('refuses to fit %j: %s', (units, code) => {
    expect(fitPowerLaw(units)).toMatchObject({ ok: false, problem: { code, field: 'units' } })
  })
})

describe('tests for trend', () => {
  it('events at 1, 2, 3 of 4 show none; Laplace of 3, 3.5, 4 of 4 is 4.5 / √4 = 2.25', () => {
    expect(trendTests([unit(4, 1, 2, 3)])).toMatchObject({ ok: true, laplace: 0, laplaceP: 1, degreesOfFreedom: 6 })
    const late = trendTests([unit(4, 3, 3.5, 4)])
    expect(late.ok && late.laplace).toBeCloseTo(2.25, 14)
  })

  it('each unit counts by its own watch: 3 of 4 and 2 of 2 give (1 + 1) / √((16 + 4)/12) = 1.549', () => {
    const tests = trendTests([unit(4, 3), unit(2, 2)])
    expect(tests.ok && tests.laplace).toBeCloseTo(2 / Math.sqrt(5 / 3), 14)
  })

  it('refuses where nothing happened', () => {
    expect(trendTests([unit(5)])).toMatchObject({ ok: false, problem: { code: 'repeat-events/too-few' } })
  })

  it('turn with the events, do not mind the unit of age, and their chances make one', () => {
    fc.assert(
      fc.property(watch, parts, (watchedTo, drawn) => {
        const tests = trendTests([unit(watchedTo, ...drawn.map((part) => part * watchedTo))])
        const mirrored = trendTests([unit(watchedTo, ...drawn.map((part) => (1 - part) * watchedTo))])
        const inHours = trendTests([unit(watchedTo * 24, ...drawn.map((part) => part * watchedTo * 24))])
        if (!tests.ok || !mirrored.ok || !inHours.ok) throw new Error('refused')
        expect(mirrored.laplace).toBeCloseTo(-tests.laplace, 9)
        expect(inHours.chiSquared).toBeCloseTo(tests.chiSquared, 9)
        expect(tests.rarerP + tests.moreFrequentP).toBeCloseTo(1, 12)
      }),
    )
  })
})
