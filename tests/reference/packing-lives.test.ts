import { readFileSync } from 'node:fs'
import path from 'node:path'
import { comparePackings } from '@glandkeeper/engines/packing/lives/compare'
import { comparisonSentence } from '@glandkeeper/engines/packing/lives/sentence'
import type { Lifetime } from '@glandkeeper/engines/stats/lifetime'
import { describe, expect, it } from 'vitest'

const read = (file: string): unknown => JSON.parse(readFileSync(path.join(import.meta.dirname, 'values', file), 'utf8'))

/** Each set with its source and mark beside the values. */
const { remission, maintenance, lung } = read('stats-survival.json') as {
  remission: {
    treated: Lifetime[]
    control: Lifetime[]
    median: { treated: number; control: number }
    logRank: number
    survivalOfTreated: Record<string, number>
  }
  maintenance: { maintained: Lifetime[]; other: Lifetime[]; median: { maintained: number; other: number }; logRank: number }
  lung: { rows: [days: number, ended: 0 | 1, sex: 1 | 2][]; medianBySex: [number, number]; logRankBySex: number }
}
const { handbook } = read('stats-lifetimes.json') as {
  handbook: {
    failures: number[]
    stillGoing: { count: number; at: number }
    scale: number
    shape: number
    covariance: [[number, number], [number, number]]
  }
}

function compare(groups: Readonly<Record<string, readonly Lifetime[]>>) {
  const named = Object.entries(groups).map(([name, lives]) => ({ name, lives }))
  const found = comparePackings({ groups: named, confidence: 0.95, weibull: true })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const mediansOf = (found: ReturnType<typeof compare>) => found.groups.map(({ median }) => median)

/** E. A. Freireich and others, Blood 21 (1963); E. A. Gehan, Biometrika 52 (1965). Figures run in R 4.2.2, survival 3.5-3. */
describe('remission of leukaemia, 21 and 21', () => {
  const found = compare({ treated: remission.treated, control: remission.control })

  it('medians 23 and 8, chi-squared 16.79294099 on one degree of freedom', () => {
    expect(mediansOf(found)).toEqual([remission.median.treated, remission.median.control])
    expect(found.difference?.chiSquared.toFixed(8)).toBe(remission.logRank.toFixed(8))
    expect(found.difference?.degreesOfFreedom).toBe(1)
  })

  it('9 of 21 ended and 21 of 21; survival at its seven ends', () => {
    expect(found.groups.map(({ ended, censored }) => [ended, censored])).toEqual([
      [9, 12],
      [21, 0],
    ])
    const steps = found.groups[0]?.steps.filter(({ ended }) => ended > 0) ?? []
    expect(steps.map(({ time, survival }) => [String(time), survival.toFixed(8)])).toEqual(
      Object.entries(remission.survivalOfTreated).map(([week, survival]) => [week, survival.toFixed(8)]),
    )
  })

  it('the sentence: unlikely to be chance, p below 0.001', () => {
    expect(comparisonSentence(found, { service: 'the trial' })).toMatch(
      /^In the trial treated lasts a median of 23 months .*, control 8 .*; the difference is unlikely to be chance \(p < 0\.001\)\.$/,
    )
  })
})

/** R. G. Miller, Survival Analysis, 1981; figures of the saved test output of R's survival package. */
it('maintenance chemotherapy, 11 and 12: medians 31 and 23, chi-squared 3.4, which may be chance', () => {
  const found = compare({ maintained: maintenance.maintained, other: maintenance.other })
  expect(mediansOf(found)).toEqual([maintenance.median.maintained, maintenance.median.other])
  expect(found.difference?.chiSquared.toFixed(1)).toBe(maintenance.logRank.toFixed(1))
  expect(comparisonSentence(found, { service: 'the trial' })).toContain('; the difference may be chance (p = 0.065).')
})

/** C. L. Loprinzi and others, J. Clin. Oncol. 12 (1994). Figures run in R 4.2.2, survival 3.5-3. */
it('lung cancer by sex, 228: medians 270 and 426, chi-squared 10.32674195', () => {
  const ofSex = (wanted: number) =>
    lung.rows.filter(([, , sex]) => sex === wanted).map(([time, ended]) => ({ time, ended: ended === 1 }))
  const found = compare({ one: ofSex(1), two: ofSex(2) })
  expect(mediansOf(found)).toEqual(lung.medianBySex)
  expect(found.difference?.chiSquared.toFixed(8)).toBe(lung.logRankBySex.toFixed(8))
  expect(found.groups.map((group) => group.lives)).toEqual([138, 90])
})

/** NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3; further digits and covariance run in R 4.2.2. */
describe('ten failures, ten units stopped at 500 hours', () => {
  const going = Array.from({ length: handbook.stillGoing.count }, () => ({ time: handbook.stillGoing.at, ended: false }))
  const law = compare({ units: [...handbook.failures.map((time) => ({ time, ended: true })), ...going] }).groups[0]?.law

  it('Weibull scale 606.527558, shape 1.720797261', () => {
    expect(law?.scale.toFixed(6)).toBe(handbook.scale.toFixed(6))
    expect(law?.shape.toFixed(9)).toBe(handbook.shape.toFixed(9))
  })

  it('limits: 1.959964 errors to either side on the logarithm', () => {
    const [[logScale], [, logSpread]] = handbook.covariance
    const reach = (variance: number) => Math.exp(1.959963984540054 * Math.sqrt(variance))
    expect(law?.scaleLower).toBeCloseTo(handbook.scale / reach(logScale), 4)
    expect(law?.scaleUpper).toBeCloseTo(handbook.scale * reach(logScale), 4)
    expect(law?.shapeLower).toBeCloseTo(handbook.shape / reach(logSpread), 6)
    expect(law?.shapeUpper).toBeCloseTo(handbook.shape * reach(logSpread), 6)
  })
})
