import { readFileSync } from 'node:fs'
import path from 'node:path'
import { betaBelow, betaQuantile } from '@glandkeeper/engines/stats/beta'
import { chiSquaredQuantile, chiSquaredUpperQuantile } from '@glandkeeper/engines/stats/chi-squared'
import { fitExponential } from '@glandkeeper/engines/stats/exponential'
import { gammaAbove, gammaBelow, gammaQuantile, gammaUpperQuantile } from '@glandkeeper/engines/stats/gamma'
import type { KnownLifetime } from '@glandkeeper/engines/stats/lifetime'
import { logGamma } from '@glandkeeper/engines/stats/log-gamma'
import { normalDistribution, normalQuantile } from '@glandkeeper/engines/stats/normal'
import { studentDistribution, studentQuantile } from '@glandkeeper/engines/stats/student-t'
import { fitWeibull } from '@glandkeeper/engines/stats/weibull'
import { describe, expect, it } from 'vitest'

type Rows = readonly number[][]

/** Made outside the project with 60 digits; how stands in stats-distributions.py beside the values. */
const exact = read('stats-distributions.json') as Record<
  | 'normal'
  | 'normalQuantiles'
  | 'logGammas'
  | 'gammas'
  | 'vastGammas'
  | 'gammaQuantiles'
  | 'gammaUpperQuantiles'
  | 'betas'
  | 'betaQuantiles'
  | 'students'
  | 'studentQuantiles',
  Rows
> & {
  intervalWeibull: {
    lives: KnownLifetime[]
    scale: number
    shape: number
    logLikelihood: number
    exponentialMean: number
    exponentialLogLikelihood: number
  }
}

/** Printed tables, each with its source beside the values. */
const tables = read('stats-tables.json') as {
  chiSquared: { upper: number[]; rows: Record<string, number[]>; lower: number[]; lowerRows: Record<string, number[]> }
  student: { below: number[]; rows: Record<string, number[]> }
  normal: { rows: [number, number][] }
  gamma: { rows: [number, number][] }
}

function read(name: string): unknown {
  return JSON.parse(readFileSync(path.join(import.meta.dirname, 'values', name), 'utf8'))
}

/** Distance relative to the true value. */
function off(ours: number, truth: number): number {
  return ours === truth ? 0 : Math.abs(ours / truth - 1)
}

describe('against figures of 60 digits', () => {
  it.each(exact.normal)('normal distribution at %d', (x, p) => {
    // Below the smallest normal double a double holds fewer digits.
    expect(off(normalDistribution(x!), p!)).toBeLessThan(p! < 1e-307 ? 1e-7 : 2e-15)
  })

  it.each(exact.normalQuantiles)('normal quantile of %d', (p, x) => {
    expect(off(normalQuantile(p!), x!)).toBeLessThan(4e-16)
  })

  it.each(exact.logGammas)('log-gamma of %d', (x, value) => {
    expect(off(logGamma(x!), value!)).toBeLessThan(1e-15)
  })

  it.each(exact.gammas)('gamma of shape %d at %d, both tails', (shape, x, below, above) => {
    expect(off(gammaBelow(shape!, x!), below!)).toBeLessThan(1e-13)
    expect(off(gammaAbove(shape!, x!), above!)).toBeLessThan(1e-13)
  })

  it.each(exact.vastGammas)('gamma of vast shape %d at %d', (shape, x, below, above) => {
    expect(off(gammaBelow(shape!, x!), below!)).toBeLessThan(1e-12)
    expect(off(gammaAbove(shape!, x!), above!)).toBeLessThan(1e-12)
  })

  it.each(exact.gammaQuantiles)('gamma quantile, shape %d, p %d', (shape, p, x) => {
    expect(off(gammaQuantile(shape!, p!), x!)).toBeLessThan(1e-13)
    expect(off(chiSquaredQuantile(p!, 2 * shape!), 2 * x!)).toBeLessThan(1e-13)
  })

  it.each(exact.gammaUpperQuantiles)('upper gamma quantile, shape %d, q %d', (shape, q, x) => {
    expect(off(gammaUpperQuantile(shape!, q!), x!)).toBeLessThan(1e-13)
    expect(off(chiSquaredUpperQuantile(q!, 2 * shape!), 2 * x!)).toBeLessThan(1e-13)
  })

  it.each(exact.betas)('beta (%d, %d) at %d', (shapeBelow, shapeAbove, x, below) => {
    const share = betaBelow({ shapeBelow: shapeBelow!, shapeAbove: shapeAbove!, x: x! })
    expect(off(share, below!)).toBeLessThan(shapeBelow! >= 1e5 ? 1e-11 : 1e-13)
  })

  it.each(exact.betaQuantiles)('beta (%d, %d) quantile of %d', (shapeBelow, shapeAbove, p, x) => {
    expect(off(betaQuantile({ shapeBelow: shapeBelow!, shapeAbove: shapeAbove!, p: p! }), x!)).toBeLessThan(1e-12)
  })

  it.each(exact.students)('Student t, %d degrees of freedom, tail beyond %d', (degreesOfFreedom, t, tail) => {
    expect(off(studentDistribution(-t!, degreesOfFreedom!), tail!)).toBeLessThan(1e-12)
    expect(studentDistribution(t!, degreesOfFreedom!)).toBe(1 - studentDistribution(-t!, degreesOfFreedom!))
  })

  it.each(exact.studentQuantiles)('Student t quantile, %d degrees of freedom, p %d', (degreesOfFreedom, p, t) => {
    expect(off(studentQuantile(p!, degreesOfFreedom!), t!)).toBeLessThan(1e-12)
  })

  it('Weibull and exponential of lives known between two looks, found by another search', () => {
    const { lives, scale, shape, logLikelihood, exponentialMean, exponentialLogLikelihood } = exact.intervalWeibull
    const weibull = fitWeibull({ lives, confidence: 0.95 })
    const exponential = fitExponential({ lives, confidence: 0.95 })
    if (!weibull.ok || !exponential.ok) throw new Error('no fit')
    expect(off(weibull.scale, scale)).toBeLessThan(1e-6)
    expect(off(weibull.shape, shape)).toBeLessThan(1e-6)
    expect(off(weibull.logLikelihood, logLikelihood)).toBeLessThan(1e-12)
    expect(off(exponential.mean, exponentialMean)).toBeLessThan(1e-6)
    expect(off(exponential.logLikelihood, exponentialLogLikelihood)).toBeLessThan(1e-12)
  })
})

describe('against printed tables', () => {
  const rows = (table: Record<string, number[]>) =>
    Object.entries(table).map(([degrees, values]) => ({ degrees: Number(degrees), values }))

  it.each(rows(tables.chiSquared.rows))('upper chi-squared, $degrees degrees of freedom (from memory)', ({ degrees, values }) => {
    const ours = tables.chiSquared.upper.map((q) => chiSquaredUpperQuantile(q, degrees).toFixed(3))
    expect(ours).toEqual(values.map((value) => value.toFixed(3)))
  })

  it.each(rows(tables.chiSquared.lowerRows))(
    'lower chi-squared, $degrees degrees of freedom (from memory)',
    ({ degrees, values }) => {
      const ours = tables.chiSquared.lower.map((p) => chiSquaredQuantile(p, degrees).toFixed(3))
      expect(ours).toEqual(values.map((value) => value.toFixed(3)))
    },
  )

  it.each(rows(tables.student.rows))('Student t, $degrees degrees of freedom (from memory)', ({ degrees, values }) => {
    const ours = tables.student.below.map((p) => studentQuantile(p, degrees).toFixed(3))
    expect(ours).toEqual(values.map((value) => value.toFixed(3)))
  })

  it.each(tables.normal.rows)('normal distribution at %d, fifteen decimals (from memory)', (x, p) => {
    expect(normalDistribution(x)).toBeCloseTo(p, 14)
  })

  it.each(tables.gamma.rows)('gamma function of %d, ten decimals (from memory)', (x, value) => {
    expect(Math.exp(logGamma(x)).toFixed(10)).toBe(value.toFixed(10))
  })
})
