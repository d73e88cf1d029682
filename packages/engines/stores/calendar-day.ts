import { constructorOf, type Quantity } from '@glandkeeper/units/quantity'

/** Days since 1 January 1970, in the calendar of the site: no hour, no time zone. */
export type CalendarDay = Quantity<'calendar day'>

export const calendarDay = constructorOf('calendar day')

/** Beyond these somebody mistyped. */
const [FIRST_YEAR, LAST_YEAR] = [1900, 2999]
const DAYS_OF_FOUR_CENTURIES = 146_097
/** From 1 March of the year 0 to 1 January 1970. */
const TO_1970 = 719_468

/**
 * The day that `2026-03-01` writes, from the year 1900 to 2999; null for anything else, also for a 30th of February.
 * A year is counted from 1 March, so that the day of a leap year is its last.
 *
 * @source SRC-780 days of the Gregorian calendar (docs/sources.md)
 * @example calendarDayOf('1970-03-01') // → 59
 * @example calendarDayOf('2026-02-29') // → null
 */
export function calendarDayOf(written: string): CalendarDay | null {
  const [year = 0, month = 0, day = 0] = /^\d{4}-\d{2}-\d{2}$/.test(written) ? written.split('-').map(Number) : []
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12 || day < 1) return null
  const fromMarch = (month + 9) % 12
  const marchYear = month < 3 ? year - 1 : year
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400)
  const found = calendarDay(marchYear * 365 + leapDays + Math.floor((153 * fromMarch + 2) / 5) + day - 1 - TO_1970)
  return writtenDay(found) === written ? found : null
}

/** @example writtenDay(calendarDay(20513)) // → '2026-03-01' */
export function writtenDay(day: CalendarDay): string {
  const fromYearNought = day + TO_1970
  const era = Math.floor(fromYearNought / DAYS_OF_FOUR_CENTURIES)
  const dayOfEra = fromYearNought - era * DAYS_OF_FOUR_CENTURIES
  const leapDays = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096)
  const yearOfEra = Math.floor((dayOfEra - leapDays) / 365)
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9
  const year = era * 400 + yearOfEra + (month < 3 ? 1 : 0)
  const dayOfMonth = dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1
  const padded = (number: number, places: number) => String(number).padStart(places, '0')
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(dayOfMonth, 2)}`
}
