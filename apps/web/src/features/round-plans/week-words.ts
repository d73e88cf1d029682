import { addWeeks, differenceInCalendarWeeks, format, getISOWeek, parseISO } from 'date-fns'

/** @example weekNumber('2026-06-01', 2) // → 25 */
export function weekNumber(startsOn: string, week: number): number {
  return getISOWeek(addWeeks(parseISO(startsOn), week))
}

/** @example mondayOfWeek('2026-06-01', 2) // → '2026-06-15' */
export function mondayOfWeek(startsOn: string, week: number): string {
  return format(addWeeks(parseISO(startsOn), week), 'yyyy-MM-dd')
}

/** Weeks since a Monday on a day of the site. */
export function weekOfDay(startsOn: string, day: Date): number {
  return differenceInCalendarWeeks(day, parseISO(startsOn), { weekStartsOn: 1 })
}

/** @example weekInWords('2026-06-15') // → 'week 25, from 15 Jun' */
export function weekInWords(monday: string): string {
  const day = parseISO(monday)
  return `week ${getISOWeek(day)}, from ${format(day, 'd MMM')}`
}

/** @example windowInWords('2026-06-15', '2026-06-29') // → 'week 25 to 27' */
export function windowInWords(earliest: string, latest: string): string {
  const [first, last] = [getISOWeek(parseISO(earliest)), getISOWeek(parseISO(latest))]
  return earliest === latest ? `week ${first}` : `week ${first} to ${last}`
}

/** @example hoursInWords(41.25) // → '41.3 h' */
export function hoursInWords(hours: number): string {
  return `${hours.toFixed(hours < 10 ? 1 : 0)}\u00a0h`
}
