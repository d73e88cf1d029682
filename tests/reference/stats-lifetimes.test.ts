import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitExponential } from '@glandkeeper/engines/stats/exponential'
import type { KnownLifetime } from '@glandkeeper/engines/stats/lifetime'
import { fitWeibull, weibullQuantile } from '@glandkeeper/engines/stats/weibull'
import { describe, expect, it } from 'vitest'

/** Each set with its source and mark beside the values. */
const published = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/stats-lifetimes.json'), 'utf8')) as {
  handbook: {
    failures: number[]
    stillGoing: { count: number; at: number }
    scale: number
    shape: number
    logLikelihood: number
    aic: number
    mean: number
    standardDeviation: number
    exponentialMean: number
    tenPerCentAge: number
    medianAge: number
    covariance: [[number, number], [number, number]]
  }
  ballBearings: { failures: number[]; scale: number; shape: number; logLikelihood: number }
}

function fitOf(lives: readonly KnownLifetime[]) {
  const fit = fitWeibull({ lives, confidence: 0.95 })
  if (!fit.ok) throw new Error(fit.problem.detail)
  return fit
}

describe('ten failures, ten units stopped at 500 hours', () => {
  const { handbook } = published
  const lives: KnownLifetime[] = [
    ...handbook.failures.map((at) => ({ kind: 'ended' as const, at })),
    ...Array.from({ length: handbook.stillGoing.count }, () => ({ kind: 'going' as const, at: handbook.stillGoing.at })),
  ]
  const fit = fitOf(lives)

  it('scale 606.527558, shape 1.720797261', () => {
    expect(fit.scale.toFixed(6)).toBe(handbook.scale.toFixed(6))
    expect(fit.shape.toFixed(9)).toBe(handbook.shape.toFixed(9))
  })

  it('log-likelihood -75.13461816, AIC 154.2692363', () => {
    expect(fit.logLikelihood.toFixed(8)).toBe(handbook.logLikelihood.toFixed(8))
    expect(fit.aic.toFixed(7)).toBe(handbook.aic.toFixed(7))
  })

  it('mean 540.737, standard deviation 323.806; the exponential mean is 777.1 and fits worse', () => {
    expect(fit.mean.toFixed(3)).toBe(handbook.mean.toFixed(3))
    expect(fit.standardDeviation.toFixed(3)).toBe(handbook.standardDeviation.toFixed(3))
    const exponential = fitExponential({ lives, confidence: 0.95 })
    if (!exponential.ok) throw new Error(exponential.problem.detail)
    expect(exponential.mean).toBeCloseTo(handbook.exponentialMean, 10)
    expect(exponential.aic).toBeGreaterThan(fit.aic)
  })

  it('a tenth has failed by 164.0224, half by 490.1738', () => {
    const ageAt = (share: number) => {
      const quantile = weibullQuantile({ fit, share, confidence: 0.95 })
      return quantile.ok ? quantile.age.toFixed(4) : null
    }
    expect([ageAt(0.1), ageAt(0.5)]).toEqual([handbook.tenPerCentAge.toFixed(4), handbook.medianAge.toFixed(4)])
  })

  it('variances and covariance of ln scale and ln(1 / shape) to ten decimals', () => {
    const [[logScale, both], [, logSpread]] = handbook.covariance
    expect(fit.covariance.logScale).toBeCloseTo(logScale, 10)
    expect(fit.covariance.both).toBeCloseTo(both, 10)
    expect(fit.covariance.logSpread).toBeCloseTo(logSpread, 10)
  })
})

it('23 ball bearings: scale 81.88, shape 2.10, log-likelihood -113.691 (from memory)', () => {
  const { failures, scale, shape, logLikelihood } = published.ballBearings
  const fit = fitOf(failures.map((at) => ({ kind: 'ended', at })))
  expect(fit.scale.toFixed(2)).toBe(scale.toFixed(2))
  expect(fit.shape.toFixed(2)).toBe(shape.toFixed(2))
  expect(fit.logLikelihood.toFixed(3)).toBe(logLikelihood.toFixed(3))
})
