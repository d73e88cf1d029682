import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitLeakGroup, intervalBetweenVisits, logLikelihoodOfCounts, type VisitSpan } from '@glandkeeper/engines/leak/interval'
import { chooseExponent, logLikelihoodOfSpans } from '@glandkeeper/engines/leak/interval-exponent'
import { minimise } from '@glandkeeper/engines/stats/nelder-mead'
import { days, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

interface Row {
  readonly shape: number
  readonly scale: number
  readonly exponent: number
  readonly target: number
  readonly days: number
  readonly logLikelihood: number
}

const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/leak-interval.json'), 'utf8')) as {
  pumps: { failures: number[]; hours: number[] }
  pumpLikelihoods: { rows: Row[] }
  pumpMaximum: { shape: number; scale: number }
  lomax: { rows: Row[] }
  spans: { valves: [number, number, number][][]; rows: Row[] }
  weibull: {
    failures: number[]
    stillRunning: { at: number; count: number }
    life: number
    exponent: number
    logLikelihood: number
  }
}
const spanOf = (from: number, to: number, leaked: boolean): VisitSpan => ({ from: days(from), to: days(to), leaked })
const pumps = values.pumps.failures.map((leaks, index) => ({ leaks, exposure: values.pumps.hours[index]! }))

describe('counts with gamma distributed rates', () => {
  it.each(values.pumpLikelihoods.rows)(
    'log-likelihood of ten pumps at shape $shape and scale $scale',
    ({ logLikelihood, ...gamma }) => expect(logLikelihoodOfCounts(pumps, gamma)).toBeCloseTo(logLikelihood, 9),
  )

  it('the likeliest gamma for the pumps: shape 0.82, scale 1.26 (from memory: Gaver and O’Muircheartaigh)', () => {
    const loss = ([logShape = 0, logScale = 0]: readonly number[]) =>
      -logLikelihoodOfCounts(pumps, { shape: Math.exp(logShape), scale: Math.exp(logScale) })
    const { point } = minimise(loss, [0, 0], { step: 0.5, tolerance: 1e-14, mostEvaluations: 2000 })
    expect(Math.exp(point[0]!)).toBeCloseTo(values.pumpMaximum.shape, 5)
    expect(Math.exp(point[1]!)).toBeCloseTo(values.pumpMaximum.scale, 5)
  })
})

describe('the interval without a visit', () => {
  it.each(values.lomax.rows)('is the Lomax quantile: shape $shape, scale $scale, target $target', (row) => {
    const group = { ...row, exponent: 1, valves: 1, leaks: 1 }
    const found = intervalBetweenVisits({ group, visits: [], age: days(0), target: ratio(row.target) })
    expect(found.ok && found.interval).toBeCloseTo(row.days, 9)
  })
})

describe('visits with rates averaged out', () => {
  const valves = values.spans.valves.map((visits) => visits.map(([from, to, leaked]) => spanOf(from, to, leaked === 1)))

  it.each(values.spans.rows)('as by adaptive quadrature: shape $shape, scale $scale, exponent $exponent', (row) =>
    expect(logLikelihoodOfSpans(valves, row)).toBeCloseTo(row.logLikelihood, 4),
  )

  it('one valve, one leak within 30 to 60 days, in closed form: (b/(b+30))^a - (b/(b+60))^a', () => {
    const exact = Math.log((600 / 630) ** 2 - (600 / 660) ** 2)
    const found = logLikelihoodOfSpans([[spanOf(0, 30, false), spanOf(30, 60, true)]], { shape: 2, scale: 600, exponent: 1 })
    expect(found).toBeCloseTo(exact, 4)
  })
})

describe('Weibull lives of the NIST handbook, as visits a hundredth of an hour apart', () => {
  const { failures, stillRunning, life, exponent, logLikelihood } = values.weibull
  const width = 0.01
  const valves = [
    ...failures.map((at) => [spanOf(0, at - width / 2, false), spanOf(at - width / 2, at + width / 2, true)]),
    ...Array.from({ length: stillRunning.count }, () => [spanOf(0, stillRunning.at, false)]),
  ]
  const alike = (k: number) => ({ shape: 1e7, scale: 1e7 * life ** k, exponent: k })

  it('valves that do not differ have the published log-likelihood', () =>
    expect(logLikelihoodOfSpans(valves, alike(exponent)) - failures.length * Math.log(width)).toBeCloseTo(logLikelihood, 4))

  it('and the published exponent is the likeliest near it', () => {
    const at = (k: number) => logLikelihoodOfSpans(valves, alike(k))
    expect(at(exponent)).toBeGreaterThan(at(exponent * 1.03))
    expect(at(exponent)).toBeGreaterThan(at(exponent * 0.97))
  })

  it('twenty units do not make an exponent other than 1 certain enough, if they may differ', () => {
    const choice = chooseExponent(valves)
    if (!choice.ok) throw new Error(choice.problem.detail)
    expect(choice.keepsOne).toBe(choice.gain <= 3.841)
    expect(choice.likeliest).toBeGreaterThan(1.5)
  })
})

it('a group of one valve, one leak in ten: the mean rate is nearly that of the count over the exposure', () => {
  const visits = Array.from({ length: 10 }, (_, visit) => spanOf(0, 1, visit === 9))
  const fit = fitLeakGroup({ valves: [visits], exponent: 1 })
  expect(fit.ok && (fit.shape / fit.scale) * 9.5).toBeCloseTo(1, 1)
})
