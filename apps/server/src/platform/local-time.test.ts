import { TZDate } from '@date-fns/tz'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dayAt } from './clock.ts'
import { daysAfter, isoWeekOf, momentAt, mondayOf } from './local-time.ts'

it('the examples of the docstrings hold', () => {
  expect(momentAt('2025-03-30', '01:30', 'Europe/London').toISOString()).toBe('2025-03-30T01:30:00.000Z')
  expect(daysAfter('2028-02-28', 2)).toBe('2028-03-01')
  expect(mondayOf('2027-01-03')).toBe('2026-12-28')
  expect(isoWeekOf('2027-01-03')).toEqual({ year: 2026, week: 53 })
})

const aDay = fc
  .date({ min: new Date('1975-01-01'), max: new Date('2060-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10))
const aPlace = fc.constantFrom(
  'UTC',
  'Europe/London',
  'America/St_Johns',
  'Australia/Lord_Howe',
  'Asia/Kathmandu',
  'America/Havana',
)

it('07:00 is 07:00 on that day wherever the site is, and 24 hours from the next but where clocks change', () => {
  fc.assert(
    fc.property(aDay, aPlace, (day, place) => {
      const moment = momentAt(day, '07:00', place)
      expect(dayAt(moment, place)).toBe(day)
      expect([new TZDate(moment, place).getHours(), new TZDate(moment, place).getMinutes()]).toEqual([7, 0])
    }),
  )
})

it('a time of day that no clock showed all day long is read by the offset of the day before', () => {
  // Samoa left out 30 December 2011: 07:00 by the offset of 29 December, -10:00.
  expect(momentAt('2011-12-30', '07:00', 'Pacific/Apia').toISOString()).toBe('2011-12-30T17:00:00.000Z')
})

it('a week begins on its Monday, and all its days are of one ISO week', () => {
  fc.assert(
    fc.property(aDay, (day) => {
      const monday = mondayOf(day)
      expect(new Date(`${monday}T00:00:00Z`).getUTCDay()).toBe(1)
      expect(monday <= day && day <= daysAfter(monday, 6)).toBe(true)
      expect(isoWeekOf(day)).toEqual(isoWeekOf(monday))
    }),
  )
})
