import { addDays, days, instant, mm, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { replayLife } from './calibration-replay.ts'
import { forecastReserve } from './forecast.ts'
import type { LifeRecord } from './life.ts'
import { defaultPrior } from './prior.ts'

const day = (count: number) => addDays(instant(0), days(count))
const chances = [0.1, 0.5, 0.9].map((chance) => ratio(chance))
const life: LifeRecord = {
  readings: Array.from({ length: 12 }, (_, index) => ({ at: day(60 * index), reserve: mm(12 - index) })),
  nips: [{ at: day(90), travel: mm(0.875) }],
  repackedAt: day(0),
  step: mm(0.875),
}
const replayed = (given: Partial<Parameters<typeof replayLife>[0]> = {}) =>
  replayLife({
    life,
    prior: defaultPrior,
    earlierLives: [],
    chances,
    name: 'A',
    group: 'steam',
    outcome: { ranOut: true, at: day(720) },
    ...given,
  })

describe('a life of 12 readings, gone through again', () => {
  it('is forecast at its 1st, 2nd, 3rd, 4th, 6th and 10th reading', () => {
    expect(replayed().map(({ readingsUsed, countedFrom }) => [readingsUsed, countedFrom])).toEqual(
      [1, 2, 3, 4, 6, 10].map((count) => [count, day(60 * (count - 1))]),
    )
  })
  it('knows nothing that came later', () => {
    const third = replayed()[2]!
    const asThen = { ...life, readings: life.readings.slice(0, 3) }
    const then = forecastReserve({ life: asThen, prior: defaultPrior, earlierLives: [], chances, before: [] })
    expect(third.dates).toEqual(then.ok && then.dates.map(({ runsOut }) => (runsOut.state === 'on a date' ? runsOut.at : null)))
    const other = replayed({ life: { ...life, readings: life.readings.with(3, { at: day(180), reserve: mm(2) }) } })
    expect(other.slice(0, 3)).toEqual(replayed().slice(0, 3))
  })
  it('has a straight line from the third reading on: 12 mm at 1 mm in 60 days meets zero on day 720', () => {
    expect(replayed().map(({ straightLineAt }) => straightLineAt && Math.round(straightLineAt / 86_400_000))).toEqual([null, null, 720, 720, 720, 720]) // prettier-ignore
  })
  it('is not forecast once it has run out', () =>
    expect(replayed({ outcome: { ranOut: true, at: day(150) } }).map(({ readingsUsed }) => readingsUsed)).toEqual([1, 2, 3]))
  it('reaches a span later where a reading was left out', () => {
    const slip = { ...life, readings: life.readings.toSpliced(2, 0, { at: day(100), reserve: mm(60) }) }
    const made = replayed({ life: slip })
    expect(new Set(made.map(({ readingsUsed }) => readingsUsed)).size).toBe(made.length)
    expect(made.at(-1)).toMatchObject({ readingsUsed: 10, countedFrom: day(540) })
  })
  it('says nothing with a prior that cannot be used', () =>
    expect(replayed({ prior: { ...defaultPrior, valveShare: 2 } })).toEqual([]))
})
