import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays'
import { parseISO } from 'date-fns/parseISO'
import { daysAfter } from '../../platform/local-time.ts'

/** The Monday so many weeks after another. @example mondayAfter('2027-06-07', 2) // → '2027-06-21' */
export function mondayAfter(monday: string, weeks: number): string {
  return daysAfter(monday, weeks * 7)
}

/** Weeks from a Monday to the week a day is in; below 0 before it. @example weekIndexOf('2027-06-06', '2027-06-07') // → -1 */
export function weekIndexOf(isoDay: string, monday: string): number {
  return Math.floor(differenceInCalendarDays(parseISO(isoDay), parseISO(monday)) / 7)
}
