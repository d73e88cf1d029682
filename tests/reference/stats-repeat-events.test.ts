import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitLine } from '@glandkeeper/engines/stats/least-squares'
import { meanCumulativeFunction } from '@glandkeeper/engines/stats/mean-cumulative-function'
import { fitPowerLaw, meanTimeBetween, trendTests } from '@glandkeeper/engines/stats/power-law-process'
import type { WatchedUnit } from '@glandkeeper/engines/stats/repeat-events'
import { describe, expect, it } from 'vitest'

/** Each set with its source and mark beside the values. */
const published = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/stats-repeat-events.json'), 'utf8')) as {
  valveSeats: {
    units: (WatchedUnit & { id: number })[]
    replacements: number
    watched: number
    ratePerDay: number
    mean: Record<string, number>
    powerLaw: { exponent: number; factor: number }
  }
  valveSeatErrors: { rows: [age: number, error: number, lower: number, upper: number][] }
  handbook: {
    times: number[]
    watchedTo: number
    unbiasedExponent: number
    growth: number
    unbiasedFactor: number
    timeBetweenAtEnd: number
    exponent: number
    laplace: number
    chiSquared: number
    degreesOfFreedom: number
    rarerP: number
    duane: { intercept: number; slope: number }
  }
}

describe('valve seats of 41 engines (ages from memory, confirmed by every published figure)', () => {
  const { units, ...figures } = published.valveSeats
  const curve = meanCumulativeFunction({ units, confidence: 0.95, scale: 'plain' })
  const steps = curve.ok ? curve.steps : []
  const at = (age: number) => steps.find((step) => step.age === age)!

  it('48 replacements in 25,363 days, two pairs on one day kept as two', () => {
    expect(units).toHaveLength(41)
    expect(units.reduce((sum, unit) => sum + unit.watchedTo, 0)).toBe(figures.watched)
    expect(steps.reduce((sum, step) => sum + step.events, 0)).toBe(figures.replacements)
    expect((figures.replacements / figures.watched).toFixed(9)).toBe(figures.ratePerDay.toFixed(9))
    expect([at(139).events, at(653).events]).toEqual([2, 2])
    expect(units.filter(({ events }) => new Set(events).size < events.length).map(({ id }) => id)).toEqual([328, 402])
  })

  it.each(Object.entries(figures.mean))('mean number of replacements up to %s days is %d', (age, mean) => {
    expect(at(Number(age)).mean.toFixed(5)).toBe(mean.toFixed(5))
  })

  it.each(published.valveSeatErrors.rows)("Nelson's error at %d days is %d, limits %d and %d (from memory)", (age, ...row) => {
    const { standardError, lower, upper } = at(age)
    expect([standardError, lower, upper].map((figure) => figure!.toFixed(3))).toEqual(row.map((figure) => figure.toFixed(3)))
  })

  it('power law over engines watched for different times: exponent 1.399579267, factor 1.447546107e-4', () => {
    const fit = fitPowerLaw(units)
    if (!fit.ok) throw new Error(fit.problem.detail)
    expect(fit.exponent.toFixed(9)).toBe(figures.powerLaw.exponent.toFixed(9))
    expect(fit.factor.toPrecision(10)).toBe(figures.powerLaw.factor.toPrecision(10))
  })
})

describe('ten failures of one unit in 1500 hours (times from memory: arithmetic only)', () => {
  const { handbook } = published
  const units = [{ events: handbook.times, watchedTo: handbook.watchedTo }]
  const fit = fitPowerLaw(units)
  const tests = trendTests(units)
  if (!fit.ok || !tests.ok) throw new Error('refused')

  it('exponent .483506 without bias, .5372289 with; growth .516494; factor .2913003', () => {
    expect(fit.unbiasedExponent.toFixed(6)).toBe(handbook.unbiasedExponent.toFixed(6))
    expect(fit.exponent.toFixed(7)).toBe(handbook.exponent.toFixed(7))
    expect((1 - fit.unbiasedExponent).toFixed(6)).toBe(handbook.growth.toFixed(6))
    expect(fit.unbiasedFactor.toFixed(7)).toBe(handbook.unbiasedFactor.toFixed(7))
  })

  it('mean time between failures at the end 310.234 hours', () => {
    const { unbiasedFactor: factor, unbiasedExponent: exponent } = fit
    const end = meanTimeBetween({ factor, exponent, age: handbook.watchedTo })
    expect(end.ok && end.time.toFixed(3)).toBe(handbook.timeBetweenAtEnd.toFixed(3))
  })

  it('Laplace -1.326949; 2S 37.22808 on 20 degrees of freedom, p .01098636', () => {
    expect(tests.laplace.toFixed(6)).toBe(handbook.laplace.toFixed(6))
    expect(tests.chiSquared.toFixed(5)).toBe(handbook.chiSquared.toFixed(5))
    expect(tests.degreesOfFreedom).toBe(handbook.degreesOfFreedom)
    expect(tests.rarerP.toFixed(8)).toBe(handbook.rarerP.toFixed(8))
  })

  it("Duane's line through the logarithms of age and of age per failure: slope .613560637, intercept .596355166", () => {
    const line = fitLine(handbook.times.map((age, index) => ({ x: Math.log(age), y: Math.log(age / (index + 1)) })))
    if (!line.ok) throw new Error(line.problem.detail)
    expect(line.slope.toFixed(9)).toBe(handbook.duane.slope.toFixed(9))
    expect(line.intercept.toFixed(9)).toBe(handbook.duane.intercept.toFixed(9))
  })
})
