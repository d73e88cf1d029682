import { addDays, type Day, days, instant } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ForecastWithOutcome, judgeForecasts, outcomeOfLife, placeInForecast, spanOfReadings } from './calibration-place.ts'

const chances = [0.1, 0.5, 0.9]
const day = (count: number) => addDays(instant(0), days(count))
const place = (at: number, dates = [day(100), day(200), day(400)] as readonly (ReturnType<typeof day> | null)[]) => {
  const found = placeInForecast({ chances, dates, countedFrom: day(0), at: day(at) })
  return found.ok ? found.place : NaN
}

describe('the place of an outcome in a forecast of 10 % by day 100, 50 % by day 200, 90 % by day 400', () => {
  it.each([
    ['the day it counts from', 0, 0],
    ['half way to the first date', 50, 0.05],
    ['the first date', 100, 0.1],
    ['half way between 10 and 50 %', 150, 0.3],
    ['a quarter from 50 to 90 %', 250, 0.6],
    ['the last date', 400, 0.95],
    ['long after it', 4000, 0.95],
    ['before it was made', -5, 0],
  ])('%s, day %s, is at %s', (_, at, wanted) => expect(place(at)).toBeCloseTo(wanted, 12))

  it('where a date is beyond 20 years, it is put at 20 years', () => {
    expect(place(10 * 365.25, [day(0), null, null])).toBeCloseTo(0.1 + 0.5 * 0.4, 12)
    expect(place(30 * 365.25, [day(0), null, null])).toBeCloseTo(0.5, 12)
  })

  it('where several chances share one date, it is the highest of them', () =>
    expect(place(100, [day(100), day(100), day(300)])).toBe(0.5))
})

it.each([
  ['two dates for three chances', { dates: [day(1), day(2)] }, 'calibration/dates-do-not-fit'],
  ['a later chance with an earlier date', { dates: [day(3), day(2), null] }, 'calibration/dates-fall'],
  ['a date after one beyond 20 years', { dates: [day(3), null, day(4)] }, 'calibration/dates-fall'],
  ['a date that is no number', { dates: [NaN as never, day(2), null] }, 'calibration/dates-fall'],
  ['chances that fall', { chances: [0.5, 0.1, 0.9] }, 'forecast/impossible-chance'],
  ['a chance of 1', { chances: [0.1, 0.5, 1] }, 'forecast/impossible-chance'],
  ['no moment to count from', { countedFrom: NaN as never }, 'number/out-of-range'],
  ['an outcome without a date', { at: Infinity as never }, 'number/out-of-range'],
])('%s is refused', (_, wrong, code) => {
  const found = placeInForecast({ chances, dates: [day(1), day(2), null], countedFrom: day(0), at: day(1), ...wrong })
  expect(found.ok ? null : found.problem.code).toBe(code)
})

it('a place is from 0 to 1 and rises with time, or the problem has a name, for any numbers', () => {
  const any = fc.double() as fc.Arbitrary<never>
  const input = fc.record({ dates: fc.tuple(any, any, any), countedFrom: any, at: any })
  fc.assert(
    fc.property(input, any, (given, later) => {
      const sorted = { ...given, dates: given.dates.toSorted((one, other) => one - other) as never }
      for (const each of [given, sorted]) {
        const found = placeInForecast({ chances, ...each })
        if (!found.ok) return
        expect(found.place).toBeGreaterThanOrEqual(0)
        expect(found.place).toBeLessThanOrEqual(1)
        const after = placeInForecast({ chances, ...each, at: Math.max(later, given.at) as never })
        if (after.ok) expect(after.place).toBeGreaterThanOrEqual(found.place)
      }
    }),
    { numRuns: 2000 },
  )
})

it('readings fall into spans: 1, 2, 3, 4 to 5, 6 to 9, 10 or more', () => {
  expect([1, 2, 3, 4, 5, 6, 9, 10, 500].map(spanOfReadings)).toEqual(
    ['1', '2', '3', '4 to 5', '4 to 5', '6 to 9', '6 to 9', '10 or more', '10 or more'], // prettier-ignore
  )
})

describe('what became of a life', () => {
  it('is the first level without travel, whatever was read later', () => {
    const levels = [3, 0.5, -0.2, 1, -3].map((reserve, index) => ({ at: day(index), reserve }))
    expect(outcomeOfLife(levels)).toEqual({ ranOut: true, at: day(2) })
  })
  it('is that it was watched until the last level where travel was left', () =>
    expect(outcomeOfLife([{ at: day(4), reserve: 1 }])).toEqual({ ranOut: false, at: day(4) }))
  it('is not known without a level', () => expect(outcomeOfLife([])).toBeNull())
})

describe('forecasts set against outcomes', () => {
  const made = (given: Partial<ForecastWithOutcome>): ForecastWithOutcome => ({
    life: 'A',
    group: 'steam',
    readingsUsed: 4,
    countedFrom: day(0),
    dates: [day(100), day(200), day(400)],
    straightLineAt: day(330),
    outcome: { ranOut: true, at: day(300) },
    ...given,
  })
  const judged = (...forecasts: ForecastWithOutcome[]) => {
    const found = judgeForecasts({ chances, forecasts })
    return found.ok ? found.judged : found.problem.code
  }

  it('a life that ran out on day 300 where day 200 was the middle and 330 the line: 100 and 30 days off', () =>
    expect(judged(made({}))).toEqual([
      { life: 'A', group: 'steam', span: '4 to 5', place: 0.7, ranOut: true, middleMiss: 100, straightLineMiss: 30 },
    ]))
  it('of one life the first with 4 to 5 readings counts, in whatever order they come', () => {
    const later = made({ readingsUsed: 5, countedFrom: day(90), dates: [day(290), day(300), day(310)] })
    expect(judged(later, made({}))).toEqual(judged(made({})))
    expect(judged(made({}), made({ readingsUsed: 6 }), made({ life: 'B' }))).toHaveLength(3)
  })
  it('a life still watched has no error, and one not seen after the forecast tells nothing', () => {
    expect(judged(made({ outcome: { ranOut: false, at: day(300) } }))).toMatchObject([
      { place: 0.7, ranOut: false, middleMiss: null },
    ])
    expect(judged(made({ outcome: { ranOut: false, at: day(0) } }))).toEqual([])
    expect(judged(made({ outcome: { ranOut: true, at: day(-3) } }))).toEqual([])
  })
  it('one that cannot be read is named', () => expect(judged(made({ dates: [day(1)] }))).toBe('calibration/dates-do-not-fit'))
})

it('moments are moments and not days', () => {
  // @ts-expect-error a bare number is no moment
  placeInForecast({ chances, dates: [], countedFrom: 0, at: day(1) })
  const count: Day = days(1)
  // @ts-expect-error days are no moment
  placeInForecast({ chances, dates: [], countedFrom: day(0), at: count })
})
