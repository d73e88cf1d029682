import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calendarDay, calendarDayOf, writtenDay } from './calendar-day.ts'

const MILLISECONDS_PER_DAY = 86_400_000

describe('a calendar day', () => {
  it.each([
    ['1970-01-01', 0],
    ['1969-12-31', -1],
    // 56 years of 365 days and 14 leap days, then 31 and 28 days.
    ['2026-03-01', 56 * 365 + 14 + 31 + 28],
    ['2000-02-29', 30 * 365 + 7 + 31 + 28],
    // 70 years of 365 days and 17 leap days.
    ['1900-01-01', -(70 * 365 + 17)],
    ['2999-12-31', 376_199],
  ])('%s is day %i', (written, day) => {
    expect(calendarDayOf(written)).toBe(day)
    expect(writtenDay(calendarDay(day))).toBe(written)
  })

  it.each([
    '2026-02-29',
    '1900-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '0000-01-01',
    '2026-1-1',
    '',
    'soon',
  ])('%s is none', (written) => expect(calendarDayOf(written)).toBeNull())

  it('agrees with the clock of the language on any day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_567, max: 376_199 }), (day) => {
        const written = new Date(day * MILLISECONDS_PER_DAY).toISOString().slice(0, 10)
        expect(writtenDay(calendarDay(day))).toBe(written)
        expect(calendarDayOf(written)).toBe(day)
      }),
      { numRuns: 2000 },
    )
  })
})
