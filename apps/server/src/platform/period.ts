import { startOfDayAt } from './clock.ts'
import { daysAfter } from './local-time.ts'

/** First and last day as somebody asks for them; one that is left out is no bound. */
export interface AskedDays {
  readonly from?: string | undefined
  readonly to?: string | undefined
}

/** Databases do not agree on the years before and behind. */
const [FIRST_DAY, LAST_DAY] = ['1900-01-01', '9998-12-31'] as const

/** Whole days of a site's calendar as moments, the end not in it; null where there is no bound. */
export function periodOf({ from, to }: AskedDays, timeZone: string): { gte?: Date; lt?: Date } | null {
  if (from === undefined && to === undefined) return null
  return {
    ...(from !== undefined && { gte: startOfDayAt(within(from), timeZone) }),
    ...(to !== undefined && { lt: startOfDayAt(daysAfter(within(to), 1), timeZone) }),
  }
}

function within(day: string): string {
  if (day < FIRST_DAY) return FIRST_DAY
  return day > LAST_DAY ? LAST_DAY : day
}
