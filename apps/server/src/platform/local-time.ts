import { tzOffset } from '@date-fns/tz'
import { addDays } from 'date-fns/addDays'
import { format } from 'date-fns/format'
import { getISOWeek } from 'date-fns/getISOWeek'
import { getISOWeekYear } from 'date-fns/getISOWeekYear'
import { parseISO } from 'date-fns/parseISO'
import { startOfISOWeek } from 'date-fns/startOfISOWeek'

const DAY = 86_400_000

/**
 * The moment at which the clocks of a place show a time on a day, as RFC 5545, 3.3.5 reads it: of a time that comes
 * twice the first, and one that is left out by the offset that held before.
 *
 * @example momentAt('2025-03-30', '01:30', 'Europe/London').toISOString() // → '2025-03-30T01:30:00.000Z'
 */
export function momentAt(isoDay: string, time: string, timeZone: string): Date {
  const shown = Date.parse(`${isoDay}T${time}:00Z`)
  // Not TZDate: which of two like times it gives hangs on the time zone of the server's own machine.
  const offsetAt = (moment: number) => tzOffset(timeZone, new Date(moment)) * 60_000
  const before = shown - offsetAt(shown - DAY)
  const after = shown - offsetAt(shown + DAY)
  const shows = (moment: number) => moment + offsetAt(moment) === shown
  return new Date(!shows(before) && shows(after) ? after : before)
}

/** @example daysAfter('2028-02-28', 2) // → '2028-03-01' */
export function daysAfter(isoDay: string, days: number): string {
  return format(addDays(parseISO(isoDay), days), 'yyyy-MM-dd')
}

/** @example mondayOf('2027-01-03') // → '2026-12-28' */
export function mondayOf(isoDay: string): string {
  return format(startOfISOWeek(parseISO(isoDay)), 'yyyy-MM-dd')
}

/**
 * Week 1 has the first Thursday of its year (ISO 8601), so a week may belong to the year before or after its days.
 *
 * @example isoWeekOf('2027-01-03') // → { year: 2026, week: 53 }
 */
export function isoWeekOf(isoDay: string): { readonly year: number; readonly week: number } {
  const day = parseISO(isoDay)
  return { year: getISOWeekYear(day), week: getISOWeek(day) }
}
