import { expect, test } from 'vitest'
import { isDay, momentAtSite, momentOf, timeOf } from './moment-at-site.ts'

test.each([
  ['7:40', { hours: 7, minutes: 40 }],
  ['07.40', { hours: 7, minutes: 40 }],
  ['0740', { hours: 7, minutes: 40 }],
  [' 19 ', { hours: 19, minutes: 0 }],
  ['', null],
  ['24:00', 'unreadable'],
  ['7:60', 'unreadable'],
  ['740', { hours: 7, minutes: 40 }],
  ['noon', 'unreadable'],
])('the time "%s"', (text, read) => expect(timeOf(text)).toEqual(read))

test.each([
  ['2026-05-04', true],
  ['2026-02-30', false],
  ['4 May', false],
  ['', false],
])('%s is a day: %s', (day, is) => expect(isDay(day)).toBe(is))

const at = (day: string, hours: number, minutes: number, timeZone: string) =>
  momentAtSite(day, { hours, minutes }, timeZone).toISOString()

test('a time is that of the site, in summer and winter, east and west', () => {
  expect(at('2026-05-04', 7, 40, 'Europe/London')).toBe('2026-05-04T06:40:00.000Z')
  expect(at('2026-01-05', 7, 40, 'Europe/London')).toBe('2026-01-05T07:40:00.000Z')
  expect(at('2026-05-04', 0, 30, 'Asia/Kolkata')).toBe('2026-05-03T19:00:00.000Z')
  expect(at('2026-05-04', 23, 30, 'America/Denver')).toBe('2026-05-05T05:30:00.000Z')
})

test('about the night when clocks change it is still that of the site', () => {
  expect(at('2026-03-29', 0, 30, 'Europe/London')).toBe('2026-03-29T00:30:00.000Z')
  expect(at('2026-03-29', 3, 0, 'Europe/London')).toBe('2026-03-29T02:00:00.000Z')
  expect(at('2026-10-25', 3, 0, 'Europe/London')).toBe('2026-10-25T03:00:00.000Z')
  expect(at('2026-04-05', 1, 0, 'Pacific/Auckland')).toBe('2026-04-04T12:00:00.000Z')
  // This time is on no clock of that night.
  expect(['2026-03-29T00:30:00.000Z', '2026-03-29T01:30:00.000Z']).toContain(at('2026-03-29', 1, 30, 'Europe/London'))
})

test('without a time it is noon, or now where noon has not come', () => {
  const now = new Date('2026-05-04T08:00:00Z')
  expect(momentOf('2026-05-03', null, 'Europe/London', now).toISOString()).toBe('2026-05-03T11:00:00.000Z')
  expect(momentOf('2026-05-04', null, 'Europe/London', now)).toEqual(now)
  expect(momentOf('2026-05-04', null, 'Europe/London', new Date('2026-05-04T15:00:00Z')).toISOString()).toBe(
    '2026-05-04T11:00:00.000Z',
  )
  // Of a day that has not begun it stays noon, and is refused in words.
  expect(momentOf('2026-05-05', null, 'Europe/London', now).toISOString()).toBe('2026-05-05T11:00:00.000Z')
})
