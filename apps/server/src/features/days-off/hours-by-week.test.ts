import fc from 'fast-check'
import { expect, it } from 'vitest'
import { daysAfter } from '../../platform/local-time.ts'
import { closedWeeks, hoursByWeek } from './hours-by-week.ts'

const mondays = ['2026-05-04', '2026-05-11', '2026-05-18']
const workingDays = (monday: string) => [0, 1, 2, 3, 4].map((day) => daysAfter(monday, day))

it('40 hours less two days off are 40 · 3 / 5 = 24; a weekend takes nothing', () => {
  const daysOff = [{ days: ['2026-05-11', '2026-05-15', '2026-05-16', '2026-05-17'], share: 1 }]
  expect(hoursByWeek(40, mondays, daysOff)).toEqual([40, 24, 40])
})

it('half of a crew away a day is 40 · 4.5 / 5 = 36, and where all are off as well it is 40 · 4 / 5 = 32', () => {
  const half = { days: ['2026-05-04', '2026-05-18'], share: 0.5 }
  const all = { days: ['2026-05-18'], share: 1 }
  expect(hoursByWeek(40, mondays, [half, all])).toEqual([36, 40, 32])
  expect(hoursByWeek(40, mondays, [all, half, half])).toEqual([36, 40, 32])
})

it('a week without a working day has no hours, and the area is closed in it', () => {
  const daysOff = [
    { days: workingDays('2026-05-11').slice(0, 3), share: 1 },
    { days: workingDays('2026-05-11').slice(2), share: 1 },
    { days: workingDays('2026-05-18').slice(0, 4), share: 1 },
  ]
  expect(hoursByWeek(37.5, mondays, daysOff)).toEqual([37.5, 0, 7.5])
  expect(closedWeeks(mondays, daysOff)).toEqual([1])
})

it('days on which only a share of the hours is lost close no area', () => {
  expect(closedWeeks(mondays, [{ days: workingDays('2026-05-04'), share: 0.9 }])).toEqual([])
})

it('hours are never below nothing nor above what the crew has, and the order of days off does not matter', () => {
  const off = fc.record({
    days: fc.array(
      fc.integer({ min: -3, max: 24 }).map((day) => daysAfter('2026-05-04', day)),
      { maxLength: 9 },
    ),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  fc.assert(
    fc.property(fc.array(off, { maxLength: 5 }), fc.double({ min: 0, max: 2000, noNaN: true }), (daysOff, hours) => {
      const weeks = hoursByWeek(hours, mondays, daysOff)
      expect(weeks.every((left) => left >= 0 && left <= hours)).toBe(true)
      expect(hoursByWeek(hours, mondays, daysOff.toReversed())).toEqual(weeks)
    }),
  )
})

it('the examples of the docstrings hold', () => {
  const twoWeeks = ['2026-05-04', '2026-05-11']
  expect(hoursByWeek(40, twoWeeks, [{ days: ['2026-05-04', '2026-05-09'], share: 0.5 }])).toEqual([36, 40])
  expect(
    closedWeeks(twoWeeks, [{ days: ['2026-05-11', '2026-05-12', '2026-05-13', '2026-05-14', '2026-05-15'], share: 1 }]),
  ).toEqual([1])
})
