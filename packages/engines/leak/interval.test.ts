import { days, mm, ratio, type Ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  exposureOf,
  fitLeakGroup,
  intervalBetweenVisits,
  type LeakGroup,
  logLikelihoodOfCounts,
  type VisitSpan,
  watched,
} from './interval.ts'

const span = (from: number, to: number, leaked = false): VisitSpan => ({ from: days(from), to: days(to), leaked })
const group: LeakGroup = { shape: 2, scale: 600, exponent: 1, valves: 10, leaks: 20 }
const intervalOf = (more: Partial<Parameters<typeof intervalBetweenVisits>[0]> = {}) => {
  const found = intervalBetweenVisits({ group, visits: [], age: days(0), target: ratio(0.1), ...more })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('exposure', () => {
  it('a leak found after 100 days at a rate of 0.01 began after 41.8 days on average: 100 - 100 / (e - 1)', () =>
    expect(exposureOf({ dry: 0, leaking: [100] }, 0.01)).toBeCloseTo(100 - 100 / (Math.E - 1), 10))

  it.each([1e-9, 1e-6, 9e-5, 1.1e-4, 0.01, 1, 50])('equals the mean summed over a million slices, rate × span %f', (expected) => {
    const slices = 200_000
    let weight = 0
    let sum = 0
    for (let slice = 0; slice < slices; slice++) {
      const time = (slice + 0.5) / slices
      weight += Math.exp(-expected * time)
      sum += time * Math.exp(-expected * time)
    }
    expect(exposureOf({ dry: 0, leaking: [1] }, expected)).toBeCloseTo(sum / weight, 7)
  })

  it('dry visits add up, and ages count to the power: 60² + (90² - 60²) = 8100', () =>
    expect(watched([span(0, 60), span(60, 90)], 2)).toEqual({ ok: true, dry: 8100, leaking: [] }))
})

describe('the fit of a group', () => {
  it('twenty alike valves with one leak in 400 days each: a mean rate of about 1 in 350', () => {
    const valves = Array.from({ length: 20 }, () => [span(0, 300), span(300, 400, true)])
    const fit = fitLeakGroup({ valves, exponent: 1 })
    if (!fit.ok) throw new Error(fit.problem.detail)
    expect(fit.scale / fit.shape).toBeGreaterThan(340)
    expect(fit.scale / fit.shape).toBeLessThan(360)
    expect(fit).toMatchObject({ valves: 20, leaks: 20, exponent: 1 })
  })

  it('valves that differ have a smaller shape than valves that do not', () => {
    const alike = Array.from({ length: 40 }, () => [span(0, 200), span(200, 300, true), span(0, 300)])
    const different = Array.from({ length: 40 }, (_, valve) =>
      valve % 8 === 0 ? Array.from({ length: 10 }, () => span(0, 60, true)) : [span(0, 300), span(300, 600)],
    )
    const shapeOf = (valves: VisitSpan[][]) => {
      const fit = fitLeakGroup({ valves, exponent: 1 })
      return fit.ok ? fit.shape : NaN
    }
    expect(shapeOf(different)).toBeLessThan(shapeOf(alike) / 3)
  })

  it('no leak at all yet: half a leak stands in, and the interval is finite', () => {
    const fit = fitLeakGroup({ valves: [[span(0, 365)], [span(0, 365)]], exponent: 1 })
    if (!fit.ok) throw new Error(fit.problem.detail)
    expect(fit.shape / fit.scale).toBeGreaterThan(0)
    expect(intervalOf({ group: fit }).interval).toBeGreaterThan(10)
  })

  it.each([
    ['nothing', [], 1, 'interval/nothing-watched', 'valves'],
    ['valves without visits', [[], []], 1, 'interval/nothing-watched', 'valves'],
    ['a visit that ends before it begins', [[span(9, 3)]], 1, 'interval/no-span', 'valves'],
    ['an exponent of 0', [[span(0, 3)]], 0, 'interval/exponent', 'exponent'],
    ['an exponent of NaN', [[span(0, 3)]], NaN, 'interval/exponent', 'exponent'],
  ])('%s is refused by name', (_, valves, exponent, code, field) =>
    expect(fitLeakGroup({ valves, exponent })).toMatchObject({ ok: false, problem: { code, field } }),
  )

  it('the likelihood of no leak in an exposure of 2 at shape 1 and scale 2 is a half', () =>
    expect(logLikelihoodOfCounts([{ leaks: 0, exposure: 2 }], { shape: 1, scale: 2 })).toBeCloseTo(Math.log(0.5), 14))
})

describe('the interval between visits', () => {
  it('shape 2, scale 600, target 0.1, no visit yet: 600 (0.9^-½ - 1) = 32.46 days', () =>
    expect(intervalOf().interval).toBeCloseTo(600 * (0.9 ** -0.5 - 1), 10))

  it('500 dry days later: 1100 (0.9^-½ - 1) = 59.5 days', () =>
    expect(intervalOf({ visits: [span(0, 500)], age: days(500) }).interval).toBeCloseTo(1100 * (0.9 ** -0.5 - 1), 10))

  it('the chance of a leak within it, averaged over the gamma of rates, is the target', () => {
    const { interval, exposure, leaks } = intervalOf({ visits: [span(0, 90), span(90, 150, true)], target: ratio(0.05) })
    const chance = 1 - (1 + interval / (600 + exposure)) ** -(2 + leaks)
    expect(chance).toBeCloseTo(0.05, 12)
  })

  it('an exponent of 2 at age 100: √(100² + b (0.9^-½ - 1)) - 100', () => {
    const aged = { ...group, exponent: 2, scale: 60_000 }
    expect(intervalOf({ group: aged, age: days(100) }).interval).toBeCloseTo(
      Math.sqrt(10_000 + 60_000 * (0.9 ** -0.5 - 1)) - 100,
      9,
    )
  })

  it('says that the target holds on average', () => expect(intervalOf().holds).toBe('on average over like valves'))

  it.each([
    ['a target of 0', { target: ratio(0) }, 'interval/target'],
    ['a target of 1', { target: ratio(1) }, 'interval/target'],
    ['a target of NaN', { target: NaN as Ratio }, 'interval/target'],
    ['an age below 0', { age: days(-1) }, 'interval/age'],
    ['a group without a scale', { group: { ...group, scale: 0 } }, 'interval/unusable-group'],
    ['a visit without a span', { visits: [span(5, 5)] }, 'interval/no-span'],
  ])('%s is refused by name', (_, more, code) =>
    expect(intervalBetweenVisits({ group, visits: [], age: days(0), target: ratio(0.1), ...more })).toMatchObject({
      ok: false,
      problem: { code },
    }),
  )

  it('grows with the target and with dry time, shrinks with leaks', () => {
    const number = fc.double({ min: 1, max: 2000, noNaN: true })
    fc.assert(
      fc.property(number, number, (dry, more) => {
        const from = intervalOf({ visits: [span(0, dry)] }).interval
        expect(intervalOf({ visits: [span(0, dry + more)] }).interval).toBeGreaterThanOrEqual(from)
        expect(intervalOf({ visits: [span(0, dry)], target: ratio(0.2) }).interval).toBeGreaterThan(from)
        expect(intervalOf({ visits: [span(0, dry, true)] }).interval).toBeLessThan(from)
      }),
    )
  })

  it('days or any other unit of time give the same interval: all times a hundredfold, it too', () => {
    const visits = [span(0, 90), span(90, 150, true)]
    const hundredfold = visits.map(({ from, to, leaked }) => span(from * 100, to * 100, leaked))
    const scaled = { ...group, scale: 60_000 }
    expect(intervalOf({ visits: hundredfold, group: scaled }).interval / intervalOf({ visits }).interval).toBeCloseTo(100, 9)
  })

  it('is finite or a named problem for any numbers', () => {
    const any = fc.double()
    fc.assert(
      fc.property(any, any, any, any, any, any, any, (shape, scale, exponent, age, target, from, to) => {
        const input = { group: { ...group, shape, scale, exponent }, age, target, visits: [{ from, to, leaked: true }] }
        const found = intervalBetweenVisits(input as unknown as Parameters<typeof intervalBetweenVisits>[0])
        if (found.ok) expect(Number.isFinite(found.interval) && found.interval >= 0).toBe(true)
        else expect(found.problem.code).toMatch(/\//)
      }),
      { numRuns: 1000 },
    )
  })

  it('does not compile with millimetres for days or a bare target', () => {
    // @ts-expect-error millimetres are no age
    expect(intervalOf({ age: mm(3) }).ok).toBe(true)
    // @ts-expect-error a bare number is no share
    expect(intervalOf({ target: 0.1 }).ok).toBe(true)
  })
})
