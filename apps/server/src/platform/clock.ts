import { momentAt } from './local-time.ts'

/** The only source of the present time. Tests pass their own. */
export type Clock = () => Date

export const systemClock: Clock = () => new Date()

/** Making a formatter takes a thousand times as long as using one. */
const dayFormatters = new Map<string, Intl.DateTimeFormat>()

/** The day of a site on which a moment falls: `2026-05-04`. */
export function dayAt(moment: Date | number, timeZone: string): string {
  let formatter = dayFormatters.get(timeZone)
  if (!formatter) {
    formatter = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' })
    dayFormatters.set(timeZone, formatter)
  }
  return formatter.format(moment)
}

/** The first moment of a day of a site, given as `2026-05-04`. */
export function startOfDayAt(isoDay: string, timeZone: string): Date {
  return momentAt(isoDay, '00:00', timeZone)
}
