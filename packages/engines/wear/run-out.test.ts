import { days, mm } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalDistribution } from '../stats/normal.ts'
import { filterLife } from './filter.ts'
import { posteriorOfRate } from './posterior.ts'
import { defaultPrior, type SquareMillimetrePerDay } from './prior.ts'
import { chanceOfRunningOut, daysUntilChance, FARTHEST_DAYS } from './run-out.ts'

const bare = { ...defaultPrior.wear, processVariance: 0.001 as SquareMillimetrePerDay, bedInFall: mm(0) }

function outlookOf(reserves: readonly number[], wear = bare, spread = 1e-9) {
  const ages = reserves.map((_, k) => 100_000 + 90 * k)
  const filtered = filterLife(wear, { ages, reserves, from: 0, count: ages.length })
  return {
    wear,
    filtered,
    posterior: posteriorOfRate(filtered, { mean: Math.log(0.01), variance: spread }),
    stepVariance: 0.0625,
  }
}

describe('the chance of running out', () => {
  it('with 5 mm left at 0.01 mm a day, after 400 days: Φ((4 - 5) / √(0.2 + 0.0625 + 0.4))', () => {
    const chance = chanceOfRunningOut(outlookOf([5]))(400)
    expect(chance).toBeCloseTo(normalDistribution(-1 / Math.sqrt(0.6625)), 6)
  })

  it('half after 500 days, and the date for a half is 500 days', () => {
    const chanceWithin = chanceOfRunningOut(outlookOf([5]))
    expect(chanceWithin(500)).toBeCloseTo(0.5, 6)
    expect(daysUntilChance(chanceWithin, { days: 300, logDeviation: 0.3 })(0.5)).toBeCloseTo(500, 1)
  })

  it('a new packing with 5 mm, of which 1 mm is bed-in to come: half after 400 days at 0.01 mm a day', () => {
    const wear = { ...bare, bedInFall: mm(1), bedInDays: days(0) }
    const filtered = filterLife(wear, { ages: [0], reserves: [5], from: 0, count: 1 })
    const posterior = posteriorOfRate(filtered, { mean: Math.log(0.01), variance: 1e-9 })
    expect(chanceOfRunningOut({ wear, filtered, posterior, stepVariance: 0.0625 })(400)).toBeCloseTo(0.5, 3)
  })

  it('finds the day of a sudden rise, where a secant would creep', () => {
    const sudden = (daysAhead: number) => (daysAhead < 500 ? 0.1 : 0.9)
    const daysUntil = daysUntilChance(sudden, { days: 300, logDeviation: 0.3 })
    for (const chance of [0.5, 0.2, 0.85]) expect(daysUntil(chance)).toBeCloseTo(500, 2)
  })

  it('a date put back gives its chance, for any life and any order of asking', () => {
    const chances = fc.array(fc.double({ min: 0.001, max: 0.999, noNaN: true }), { minLength: 1, maxLength: 5 })
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -2, max: 25, noNaN: true }), { minLength: 1, maxLength: 9 }),
        chances,
        (reserves, asked) => {
          const chanceWithin = chanceOfRunningOut(outlookOf(reserves, defaultPrior.wear, 0.6))
          const daysUntil = daysUntilChance(chanceWithin, { days: 700, logDeviation: 0.5 })
          for (const chance of asked) {
            const found = daysUntil(chance)
            if (found === 0) expect(chanceWithin(0)).toBeGreaterThanOrEqual(chance)
            else if (found === Infinity) expect(chanceWithin(FARTHEST_DAYS)).toBeLessThan(chance)
            else expect(Math.abs(chanceWithin(found) - chance)).toBeLessThan(1e-4)
          }
        },
      ),
      { numRuns: 300 },
    )
  })

  it('never falls with time, also where the gland has run out or beds in', () => {
    const reserves = fc.array(fc.double({ min: -5, max: 25, noNaN: true }), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(reserves, fc.double({ min: 0, max: 2000, noNaN: true }), (levels, age) => {
        const ages = levels.map((_, k) => age + 40 * k)
        const wear = { ...defaultPrior.wear, processVariance: 0.02 as SquareMillimetrePerDay }
        const filtered = filterLife(wear, { ages, reserves: levels, from: 0, count: ages.length })
        const posterior = posteriorOfRate(filtered, { mean: Math.log(0.008), variance: 0.7 })
        const chanceWithin = chanceOfRunningOut({ wear, filtered, posterior, stepVariance: 0.06 })
        let before = 0
        for (const daysAhead of [0, 1, 3, 10, 30, 100, 300, 1000, 3000, 7300]) {
          const chance = chanceWithin(daysAhead)
          expect(chance).toBeGreaterThanOrEqual(before - 1e-9)
          expect(chance).toBeLessThanOrEqual(1)
          before = chance
        }
      }),
    )
  })
})
