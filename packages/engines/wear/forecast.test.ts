import { days, type Instant, instant, mm, mm2, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { forecastReserve, type ForecastInput } from './forecast.ts'
import type { LifeRecord } from './life.ts'
import { defaultPrior, type GroupPrior, type SquareMillimetrePerDay } from './prior.ts'

const at = (day: number): Instant => instant(day * 86_400_000)
const lifeOf = (readings: readonly (readonly [day: number, reserve: number])[], repacked: number | null = 0): LifeRecord => ({
  readings: readings.map(([day, reserve]) => ({ at: at(day), reserve: mm(reserve) })),
  nips: [],
  repackedAt: repacked === null ? null : at(repacked),
  step: mm(0.875),
})
/** Readings so many days apart, from a first day. */
const every = (gap: number, first: number, reserves: readonly number[]) =>
  reserves.map((reserve, nth): [number, number] => [first + nth * gap, reserve])
const usual = [0.025, 0.1, 0.5, 0.9, 0.975].map(ratio)

function forecastOf(life: LifeRecord, more: Partial<ForecastInput> = {}) {
  return forecastReserve({ life, prior: defaultPrior, earlierLives: [], chances: usual, before: [at(1000)], ...more })
}

function figuresOf(life: LifeRecord, more: Partial<ForecastInput> = {}) {
  const forecast = forecastOf(life, more)
  if (!forecast.ok) throw new Error(forecast.problem.detail)
  return forecast
}

const daysOf = (life: LifeRecord, more: Partial<ForecastInput> = {}) =>
  figuresOf(life, more).dates.map(({ runsOut }) => (runsOut.state === 'on a date' ? runsOut.days : runsOut.state))

/** A rate known to be 0.01 mm a day, no bed-in, next to no chance: then all is plain division. */
const certain: GroupPrior = {
  ...defaultPrior,
  rate: { logRate: Math.log(0.01), logRateVariance: 1e-9, logRateMeanVariance: 0 },
  wear: {
    readingVariance: mm2(1e-6),
    processVariance: 1e-9 as SquareMillimetrePerDay,
    bedInDays: days(0),
    bedInFall: mm(0),
    bedInFallVariance: mm2(0),
    bedInTime: days(50),
  },
}

describe('the forecast of the reserve', () => {
  it('5 mm left on day 100 at a known 0.01 mm a day is used up 500 days later, on day 600', () => {
    const { dates, level, rate, countedFrom } = figuresOf(lifeOf([[100, 5]]), { prior: certain, chances: [ratio(0.5)] })
    const [{ runsOut } = { runsOut: null }] = dates
    expect(runsOut?.state === 'on a date' && runsOut.days).toBeCloseTo(500, 1)
    expect(runsOut?.state === 'on a date' && (runsOut.at / 86_400_000).toFixed(1)).toBe('600.0')
    expect(level.reserve).toBeCloseTo(5, 9)
    expect(rate.perDay).toBeCloseTo(0.01, 6)
    expect(countedFrom).toBe(at(100))
  })

  it('two nips of 0.875 mm since then leave 3.25 mm: 325 days from the second nip', () => {
    const life = { ...lifeOf([[100, 5]]), nips: [120, 150].map((day) => ({ at: at(day), travel: mm(0.875) })) }
    const { dates, countedFrom, reasons } = figuresOf(life, { prior: certain, chances: [ratio(0.5)] })
    expect(countedFrom).toBe(at(150))
    expect(dates[0]!.runsOut.state === 'on a date' && dates[0]!.runsOut.days).toBeCloseTo(325, 0)
    expect(reasons).toContain('forecast/nips-since-last-reading')
  })

  it('eight nips in 200 days tell a faster rate than the prior; half a turn of √12 mm spreads the date by 1 mm', () => {
    const life = lifeOf([[300, 12]])
    const nipped = { ...life, nips: Array.from({ length: 8 }, (_, k) => ({ at: at(325 + 25 * k), travel: mm(0.875) })) }
    expect(figuresOf(nipped).rate.perDay).toBeGreaterThan(2 * figuresOf(life).rate.perDay)
    const coarse = { ...lifeOf([[100, 5]]), step: mm(Math.sqrt(12)) }
    // Φ(-1), 100 days before the middle.
    expect(figuresOf(coarse, { prior: certain, before: [at(500)] }).chances[0]!.chance).toBeCloseTo(0.158655, 4)
  })

  it('nips before the last reading change nothing: the reading has seen them', () => {
    const life = lifeOf(every(100, 0, [10, 8, 6.5]))
    expect(figuresOf({ ...life, nips: [{ at: at(50), travel: mm(0.875) }] })).toEqual(figuresOf(life))
  })

  it('without a reading is refused by name', () =>
    expect(forecastOf(lifeOf([]))).toMatchObject({ ok: false, problem: { code: 'forecast/no-reading', field: 'life' } }))

  it('with readings from before the repack only as well', () =>
    expect(forecastOf(lifeOf([[0, 5]], 10))).toMatchObject({ ok: false, problem: { code: 'forecast/no-reading' } }))

  it.each([
    ['one reading', lifeOf([[30, 12]]), ['forecast/one-reading']],
    ['two readings', lifeOf(every(90, 30, [12, 11])), ['forecast/few-readings']],
    ['two readings on one day', lifeOf(every(0.2, 30, [12, 11.8])), ['forecast/few-readings', 'forecast/one-day']],
    ['two readings at one moment', lifeOf(every(0, 30, [12, 11.8])), ['forecast/few-readings', 'forecast/one-day']],
    ['equal readings', lifeOf(every(100, 300, [8, 8, 8, 8])), ['forecast/not-falling']],
    ['rising readings', lifeOf(every(100, 300, [6, 7, 8, 8.5])), ['forecast/not-falling']],
    ['falling, then rising', lifeOf(every(100, 300, [8, 6, 6.5, 8.4])), ['forecast/not-falling']],
    ['an unknown repack date', lifeOf(every(90, 0, [9, 8, 7.5, 7]), null), ['forecast/repack-date-unknown']],
    [
      'a gross error',
      lifeOf(every(90, 0, [9, 8.5, 1, 7.5]), null),
      ['forecast/few-readings', 'forecast/repack-date-unknown', 'forecast/readings-left-out'],
    ],
    ['a gland that is spent', lifeOf(every(100, 300, [1, 0.2, -0.8, -1.5])), ['forecast/used-up']],
    ['a very great reserve', lifeOf([[300, 400]]), ['forecast/one-reading', 'forecast/beyond-20-years']],
  ])('%s: dates in order, finite, with reasons', (_, life, reasons) => {
    const forecast = figuresOf(life)
    // That 97.5 % lies beyond twenty years is said of most lives, and looked for in one row only.
    const said = forecast.reasons.filter((one) => one !== 'forecast/beyond-20-years' || reasons.includes(one))
    expect(said.toSorted()).toEqual([...reasons, 'forecast/prior-set-by-us'].toSorted())
    const order = forecast.dates.map(({ runsOut }) =>
      runsOut.state === 'on a date' ? runsOut.days : runsOut.state === 'used up' ? 0 : 1e9,
    )
    expect(order).toEqual(order.toSorted((one, other) => one - other))
    expect(Object.values(forecast.level).every(Number.isFinite)).toBe(true)
    expect(forecast.rate.perDay).toBeGreaterThan(0)
  })

  it('is the same whatever order the readings are given in', () => {
    const life = lifeOf(every(100, 0, [10, 8, 7.2, 6.5]))
    expect(figuresOf({ ...life, readings: life.readings.toReversed() })).toEqual(figuresOf(life))
  })

  it('counts days, not dates: all moved by eleven years, the days are the same', () => {
    const moved = (shift: number) =>
      daysOf(
        lifeOf(
          [
            [shift, 10],
            [shift + 100, 8.5],
            [shift + 200, 7.5],
          ],
          shift,
        ),
      )
    for (const [index, each] of moved(4018).entries()) expect(each).toBeCloseTo(Number(moved(0)[index]), 6)
  })

  it('less reserve at the end never means a later date', () => {
    const reserve = fc.double({ min: 0, max: 20, noNaN: true })
    fc.assert(
      fc.property(reserve, fc.double({ min: 0, max: 3, noNaN: true }), (last, less) => {
        // Both ends stay far enough together that neither is screened.
        const [more] = daysOf(lifeOf(every(100, 400, [last + 2, last + 1, last])), { chances: [ratio(0.5)] })
        const [fewer] = daysOf(lifeOf(every(100, 400, [last + 2 - less, last + 1 - less, last - less])), {
          chances: [ratio(0.5)],
        })
        const rank = (each: typeof more) => (typeof each === 'number' ? each : each === 'used up' ? 0 : 1e9)
        expect(rank(fewer)).toBeLessThanOrEqual(rank(more) + 0.5)
      }),
    )
  })

  it('more readings on a line narrow the interval', () => {
    const width = (count: number) => {
      const found = daysOf(lifeOf(Array.from({ length: count }, (_, k) => [300 + k * 90, 14 - k * 0.9])))
      return Number(found[3]) / Number(found[1])
    }
    expect(width(3)).toBeLessThan(width(1))
    expect(width(8)).toBeLessThan(width(3))
  })

  it('an earlier life that wore fast brings the date nearer, one that tells nothing does not', () => {
    const life = lifeOf([[30, 12]])
    const fast = lifeOf(Array.from({ length: 10 }, (_, k) => [60 + k * 60, 14 - k * 1.4]))
    const [without] = daysOf(life, { chances: [ratio(0.5)] })
    const withFast = figuresOf(life, { chances: [ratio(0.5)], earlierLives: [fast] })
    const [{ runsOut }] = withFast.dates as [(typeof withFast.dates)[number]]
    expect(runsOut.state === 'on a date' && runsOut.days).toBeLessThan(Number(without))
    expect(withFast).toMatchObject({ earlierLivesUsed: 1 })
    expect(withFast.reasons).toContain('forecast/earlier-lives-used')
    expect(daysOf(life, { chances: [ratio(0.5)], earlierLives: [lifeOf([[0, 12]]), lifeOf([])] })).toEqual([without])
  })
})
