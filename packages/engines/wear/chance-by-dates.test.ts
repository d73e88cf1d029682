import { instant, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chanceByDates } from './chance-by-dates.ts'
import { forecastReserve } from './forecast.ts'
import { defaultPrior } from './prior.ts'

const at = (day: number) => instant(day * 86_400_000)
const chances = [0.025, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.975]

/** A life read every 60 days, and the days asked about. */
function lifeOf(reserves: readonly number[]) {
  const asked = [5, 30, 90, 180, 365, 540, 730, 1460].map((ahead) => at(reserves.length * 60 + ahead))
  const forecast = forecastReserve({
    life: {
      readings: reserves.map((reserve, nth) => ({ at: at((nth + 1) * 60), reserve: mm(reserve) })),
      nips: [],
      repackedAt: at(0),
      step: mm(0.875),
    },
    prior: defaultPrior,
    earlierLives: [],
    chances: chances.map(ratio),
    before: asked,
  })
  if (!forecast.ok) throw new Error(forecast.problem.detail)
  const dates = forecast.dates.map(({ chance, runsOut }) => ({
    chance,
    at: runsOut.state === 'on a date' ? runsOut.at : runsOut.state === 'used up' ? forecast.countedFrom : null,
  }))
  const by = chanceByDates({ countedFrom: forecast.countedFrom, dates })
  return forecast.chances.map(({ before, chance }) => ({ said: chance, between: by(before) }))
}

describe('the chance between the dates that were kept', () => {
  it.each([
    ['hardly used', [11.2, 11, 10.9, 10.8]],
    ['half used', [9, 7.5, 6.6, 5.8, 5]],
    ['nearly used up', [6, 4.2, 2.4, 1.3, 0.9]],
    ['read once', [8]],
    ['used up', [4, 2, 0.5, -0.2]],
  ])('is that of the forecast itself, %s', (_, reserves) => {
    const asked = lifeOf(reserves)
    for (const { said, between } of asked) expect(Math.abs(said - between)).toBeLessThan(0.02)
    expect(asked.some(({ said }) => said > 0.01)).toBe(true)
  })

  it('never falls with time and stays a chance, whatever the dates', () => {
    const dates = fc.array(fc.option(fc.double({ min: 0, max: 7300, noNaN: true }), { nil: null }), {
      minLength: 13,
      maxLength: 13,
    })
    fc.assert(
      fc.property(dates, fc.double({ min: -100, max: 9000, noNaN: true }), fc.nat(2000), (days, from, further) => {
        const known = days.filter((day) => day !== null).toSorted((one, other) => one - other)
        const kept = chances.map((chance, index) => ({ chance, at: index < known.length ? at(known[index] ?? 0) : null }))
        const by = chanceByDates({ countedFrom: at(0), dates: kept })
        const [earlier, later] = [by(at(from)), by(at(from + further))]
        expect(earlier).toBeGreaterThanOrEqual(0)
        expect(later).toBeLessThanOrEqual(1)
        expect(later).toBeGreaterThanOrEqual(earlier - 1e-12)
      }),
    )
  })

  it('is none where every date is beyond twenty years', () => {
    const by = chanceByDates({ countedFrom: at(0), dates: chances.map((chance) => ({ chance, at: null })) })
    expect(by(at(3650))).toBe(0)
  })
})
