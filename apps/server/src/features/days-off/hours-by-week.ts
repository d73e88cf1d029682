import { daysAfter } from '../../platform/local-time.ts'

/** Days on which a share of the hours is lost, from 0 to 1. */
export interface HoursOff {
  readonly days: readonly string[]
  readonly share: number
}

const WORKING_DAYS = [0, 1, 2, 3, 4]

/**
 * The hours a crew has in each week: Monday to Friday hold a fifth each, less what days off of site and crew take.
 * Where several meet on a day, the largest share holds: nobody is away twice.
 *
 * @example hoursByWeek(40, ['2026-05-04', '2026-05-11'], [{ days: ['2026-05-04', '2026-05-09'], share: 0.5 }]) // → [36, 40]
 */
export function hoursByWeek(hoursPerWeek: number, mondays: readonly string[], daysOff: readonly HoursOff[]): number[] {
  const lost = shareLostByDay(daysOff)
  return mondays.map((monday) => {
    const daysLeft = WORKING_DAYS.reduce((left, day) => left - (lost.get(daysAfter(monday, day)) ?? 0), WORKING_DAYS.length)
    return hoursPerWeek * (daysLeft / WORKING_DAYS.length)
  })
}

/**
 * The weeks, counted from 0, in which an area is not walked at all: days off of site and area take all of each working day.
 *
 * @example closedWeeks(['2026-05-04', '2026-05-11'], [{ days: ['2026-05-11', '2026-05-12', '2026-05-13', '2026-05-14', '2026-05-15'], share: 1 }]) // → [1]
 */
export function closedWeeks(mondays: readonly string[], daysOff: readonly HoursOff[]): number[] {
  const lost = shareLostByDay(daysOff)
  return mondays.flatMap((monday, week) =>
    WORKING_DAYS.every((day) => (lost.get(daysAfter(monday, day)) ?? 0) >= 1) ? [week] : [],
  )
}

function shareLostByDay(daysOff: readonly HoursOff[]): ReadonlyMap<string, number> {
  const lost = new Map<string, number>()
  for (const { days, share } of daysOff) for (const day of days) lost.set(day, Math.max(share, lost.get(day) ?? 0))
  return lost
}
