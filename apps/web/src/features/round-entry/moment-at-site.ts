import { atSite } from '../../platform/site-time.ts'

export interface TimeOfDay {
  readonly hours: number
  readonly minutes: number
}

/** What a paper says without a time: the middle of the day, and never a moment that has not come. */
const NOON: TimeOfDay = { hours: 12, minutes: 0 }

/**
 * A time as it is typed: `7:40`, `07.40`, `0740` or `7`; null where there is none.
 *
 * @returns 'unreadable' for anything else
 */
export function timeOf(text: string): TimeOfDay | null | 'unreadable' {
  if (text.trim() === '') return null
  const found = /^(\d{1,2})(?:[:.]?(\d{2}))?$/.exec(text.trim())
  const [hours, minutes] = [Number(found?.[1]), Number(found?.[2] ?? 0)]
  return found && hours < 24 && minutes < 60 ? { hours, minutes } : 'unreadable'
}

/** True for a day of the calendar, written as `2026-05-04`. */
export function isDay(day: string): boolean {
  return /^\d{4}-\d\d-\d\d$/.test(day) && !Number.isNaN(Date.parse(day)) && new Date(day).toISOString().startsWith(day)
}

/** The moment at which the clock of the site shows this; where clocks are put forward over it, an hour later. */
export function momentAtSite(day: string, { hours, minutes }: TimeOfDay, timeZone: string): Date {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  const wanted = Date.UTC(year, month - 1, date, hours, minutes)
  const shownAt = (moment: number) => {
    const shown = atSite(new Date(moment), timeZone)
    return Date.UTC(shown.getFullYear(), shown.getMonth(), shown.getDate(), shown.getHours(), shown.getMinutes())
  }
  // The offset is asked for where the first guess lands: about the days when clocks change it is another one.
  const guess = wanted - (shownAt(wanted) - wanted)
  return new Date(guess - (shownAt(guess) - wanted))
}

/** When a row was done: its own time, or noon of the day, or now where noon has not come. */
export function momentOf(day: string, time: TimeOfDay | null, timeZone: string, now: Date): Date {
  if (time !== null) return momentAtSite(day, time, timeZone)
  const noon = momentAtSite(day, NOON, timeZone)
  const isToday = momentAtSite(day, { hours: 0, minutes: 0 }, timeZone) <= now
  return isToday && noon > now ? now : noon
}
