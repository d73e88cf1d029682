import { readFileSync } from 'node:fs'
import path from 'node:path'
import { kaplanMeier, survivalAt } from '@glandkeeper/engines/stats/kaplan-meier'
import type { Lifetime } from '@glandkeeper/engines/stats/lifetime'
import { logRank } from '@glandkeeper/engines/stats/log-rank'
import { fitWeibull } from '@glandkeeper/engines/stats/weibull'
import { describe, expect, it } from 'vitest'

/** Each set with its source and mark beside the values. */
const published = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/stats-survival.json'), 'utf8')) as {
  remission: {
    treated: Lifetime[]
    control: Lifetime[]
    survivalOfTreated: Record<string, number>
    errorsOfTreated: number[]
    median: { treated: number; control: number }
    logLimitsAt23: [number, number]
    logRank: number
    expected: [number, number]
    logRankRho1: number
  }
  maintenance: {
    maintained: Lifetime[]
    other: Lifetime[]
    survivalOfMaintained: Record<string, number>
    survivalOfOther: Record<string, number>
    median: { maintained: number; other: number }
    logRank: number
  }
  lung: {
    rows: [days: number, ended: 0 | 1, sex: 1 | 2][]
    ends: number
    median: number
    medianLimits: [number, number]
    survivalAt365: number
    errorAt365: number
    medianBySex: [number, number]
    logRankBySex: number
    weibull: { scale: number; shape: number; logLikelihood: number }
  }
  rats: { first: Lifetime[]; second: Lifetime[]; logRank: number }
}

function curveOf(lives: readonly Lifetime[]) {
  const curve = kaplanMeier({ lives, confidence: 0.95, scale: 'log' })
  if (!curve.ok) throw new Error(curve.problem.detail)
  return curve
}

function compare(groups: readonly Lifetime[][], rho = 0) {
  const test = logRank({ groups, rho })
  if (!test.ok) throw new Error(test.problem.detail)
  return test
}

describe('remission of leukaemia, 21 and 21 patients', () => {
  const { remission } = published
  const treated = curveOf(remission.treated)

  it.each(Object.entries(remission.survivalOfTreated))('survival of the treated at week %s is %d', (week, survival) => {
    expect(survivalAt(treated.steps, Number(week)).toFixed(8)).toBe(survival.toFixed(8))
  })

  it("Greenwood's errors at its seven ends", () => {
    const errors = treated.steps.filter((step) => step.ended > 0).map((step) => step.standardError!.toFixed(9))
    expect(errors).toEqual(remission.errorsOfTreated.map((error) => error.toFixed(9)))
  })

  it('limits at week 23 on the log scale, medians 23 and 8', () => {
    const { lower, upper } = treated.steps.find((step) => step.time === 23)!
    expect([lower!.toFixed(8), upper!.toFixed(8)]).toEqual(remission.logLimitsAt23.map((limit) => limit.toFixed(8)))
    expect(treated.median).toBe(remission.median.treated)
    expect(curveOf(remission.control).median).toBe(remission.median.control)
  })

  it('log-rank chi-squared 16.79294099, expected 19.250501 and 10.749499; with rho 1 14.45715', () => {
    const test = compare([remission.treated, remission.control])
    expect(test.chiSquared.toFixed(8)).toBe(remission.logRank.toFixed(8))
    expect(test.groups.map((group) => group.expected.toFixed(6))).toEqual(remission.expected.map((value) => value.toFixed(6)))
    expect(compare([remission.treated, remission.control], 1).chiSquared.toFixed(5)).toBe(remission.logRankRho1.toFixed(5))
  })
})

describe('maintenance chemotherapy, 11 and 12 patients', () => {
  const { maintenance } = published
  const cases = [
    ...Object.entries(maintenance.survivalOfMaintained).map(([week, s]) => ({
      group: 'maintained' as const,
      week,
      s,
      digits: 3,
    })),
    ...Object.entries(maintenance.survivalOfOther).map(([week, s]) => ({ group: 'other' as const, week, s, digits: 4 })),
  ]

  it.each(cases)('survival of $group at week $week is $s', ({ group, week, s, digits }) => {
    expect(survivalAt(curveOf(maintenance[group]).steps, Number(week)).toFixed(digits)).toBe(s.toFixed(digits))
  })

  it('medians 31 and 23, log-rank chi-squared 3.4', () => {
    expect(curveOf(maintenance.maintained).median).toBe(maintenance.median.maintained)
    expect(curveOf(maintenance.other).median).toBe(maintenance.median.other)
    expect(compare([maintenance.maintained, maintenance.other]).chiSquared.toFixed(1)).toBe(maintenance.logRank.toFixed(1))
  })
})

describe('lung cancer, 228 patients', () => {
  const { lung } = published
  const lives = lung.rows.map(([time, ended]) => ({ time, ended: ended === 1 }))
  const ofSex = (sex: number) => lives.filter((_, index) => lung.rows[index]![2] === sex)

  it('165 ends, median 310 (285 to 363), survival of a year .409242 with error .0358236', () => {
    const curve = curveOf(lives)
    expect(curve.steps.reduce((sum, step) => sum + step.ended, 0)).toBe(lung.ends)
    expect([curve.median, curve.medianLower, curve.medianUpper]).toEqual([lung.median, ...lung.medianLimits])
    expect(survivalAt(curve.steps, 365).toFixed(6)).toBe(lung.survivalAt365.toFixed(6))
    expect(curve.steps.findLast((step) => step.time <= 365)!.standardError!.toFixed(7)).toBe(lung.errorAt365.toFixed(7))
  })

  it('by sex: medians 270 and 426, log-rank chi-squared 10.32674195', () => {
    expect([curveOf(ofSex(1)).median, curveOf(ofSex(2)).median]).toEqual(lung.medianBySex)
    expect(compare([ofSex(1), ofSex(2)]).chiSquared.toFixed(8)).toBe(lung.logRankBySex.toFixed(8))
  })

  it('Weibull: scale 417.758665, shape 1.31684017, log-likelihood -1153.85119', () => {
    const fit = fitWeibull({
      lives: lives.map(({ time, ended }) => ({ kind: ended ? 'ended' : 'going', at: time })),
      confidence: 0.95,
    })
    if (!fit.ok) throw new Error(fit.problem.detail)
    expect(fit.scale.toFixed(6)).toBe(lung.weibull.scale.toFixed(6))
    expect(fit.shape.toFixed(8)).toBe(lung.weibull.shape.toFixed(8))
    expect(fit.logLikelihood.toFixed(5)).toBe(lung.weibull.logLikelihood.toFixed(5))
  })
})

it('tumours of rats: log-rank chi-squared 3.12 (from memory)', () => {
  expect(compare([published.rats.first, published.rats.second]).chiSquared.toFixed(2)).toBe(published.rats.logRank.toFixed(2))
})
