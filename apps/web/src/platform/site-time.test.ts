import { expect, test } from 'vitest'
import { atSite, formatMoment } from './site-time.ts'

test('a moment is told by the clock of the site, not of the device', () => {
  expect(formatMoment('2026-05-04T06:30:00Z', 'Europe/London')).toBe('4 May 2026, 07:30')
  expect(formatMoment('2026-05-04T06:30:00Z', 'Asia/Kolkata')).toBe('4 May 2026, 12:00')
})

test('the day at the site may be another day than in UTC', () => {
  const late = atSite(new Date('2026-05-04T22:30:00Z'), 'Australia/Sydney')
  expect([late.getDate(), late.getHours()]).toEqual([5, 8])
})

test('midnight at the site is hour 0 of the new day', () => {
  const midnight = atSite(new Date('2026-01-01T00:00:00Z'), 'UTC')
  expect([midnight.getFullYear(), midnight.getHours()]).toEqual([2026, 0])
})
