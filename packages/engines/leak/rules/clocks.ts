import { type Outcome, refuse } from '../../outcome.ts'
import { type CalendarDay, calendarDay, calendarDayOf, writtenDay } from '../../stores/calendar-day.ts'
import { type LeakRuleSet, refusedRepairDays } from './rule.ts'

/** Days as `2026-03-01`, of the calendar of the site. */
export interface RepairClockInput {
  readonly detectedOn: string
  /** The first try at the gland after that day. A repair is a try too, where no earlier one is known. */
  readonly firstAttemptOn: string | null
  /** The day a look showed that it no longer leaks. */
  readonly repairedOn: string | null
  /** Put off as the rule allows it; `until` null while no day is set. */
  readonly deferred: { readonly until: string | null } | null
  readonly today: string
  readonly rule: Pick<LeakRuleSet, 'firstAttemptDays' | 'repairDays'>
}

export interface RepairClock {
  readonly firstAttemptBy: string
  readonly repairBy: string
  readonly attempt: 'made' | 'made late' | 'due' | 'overdue'
  readonly repair: 'verified' | 'verified late' | 'due' | 'overdue' | 'put off' | 'put off, past its day'
  /**
   * From today, or from the day it was verified, to the day it is to be repaired by; below 0 past it.
   * Put off: to that day. Null where it is put off without a day.
   */
  readonly daysLeft: number | null
}

interface Days {
  readonly detectedOn: CalendarDay
  readonly firstAttemptOn: CalendarDay | null
  readonly repairedOn: CalendarDay | null
  readonly until: CalendarDay | null
  readonly today: CalendarDay
}

/**
 * The clocks of a leak that was found: first attempt and repair, in calendar days after the day it was found.
 *
 *     by = day found + days of the rule       the day itself is still in time
 *
 * A leak put off is late only past the day it was put off to; the first attempt is not put off with it.
 *
 * @source SRC-755 calendar days after detection (docs/sources.md)
 * @returns the two days, how each stands, and the days left; or `clock/not-a-day`, `clock/before-it-was-found`, `clock/after-today`, `rule/…`
 * @example repairClock({ detectedOn: '2025-02-20', firstAttemptOn: null, repairedOn: null, deferred: null, today: '2025-02-26', rule: { firstAttemptDays: 5, repairDays: 15 } }) // → { ok: true, firstAttemptBy: '2025-02-25', repairBy: '2025-03-07', attempt: 'overdue', repair: 'due', daysLeft: 9 }
 */
export function repairClock(input: RepairClockInput): Outcome<RepairClock> {
  const refused = refusedRepairDays(input.rule)
  if (refused) return refused
  const days = daysOf(input)
  if ('problem' in days) return days
  const attemptBy = calendarDay(days.detectedOn + input.rule.firstAttemptDays)
  const repairBy = calendarDay(days.detectedOn + input.rule.repairDays)
  const dueBy = dayToKeep(repairBy, input.deferred !== null, days.until)
  return {
    ok: true,
    firstAttemptBy: writtenDay(attemptBy),
    repairBy: writtenDay(repairBy),
    attempt: attemptOf(earlier(days.firstAttemptOn, days.repairedOn), attemptBy, days.today),
    repair: repairOf(days, dueBy, input.deferred !== null),
    daysLeft: dueBy === null ? null : dueBy - (days.repairedOn ?? days.today),
  }
}

/** Null: put off without a day. A leak cannot be put off to a day before the rule asks for. */
function dayToKeep(repairBy: CalendarDay, isDeferred: boolean, until: CalendarDay | null): CalendarDay | null {
  if (!isDeferred) return repairBy
  return until !== null && until < repairBy ? repairBy : until
}

function attemptOf(madeOn: CalendarDay | null, by: CalendarDay, today: CalendarDay): RepairClock['attempt'] {
  if (madeOn !== null) return madeOn <= by ? 'made' : 'made late'
  return today <= by ? 'due' : 'overdue'
}

function repairOf({ repairedOn, today }: Days, dueBy: CalendarDay | null, isDeferred: boolean): RepairClock['repair'] {
  const isInTime = dueBy === null || (repairedOn ?? today) <= dueBy
  if (repairedOn !== null) return isInTime ? 'verified' : 'verified late'
  if (isDeferred) return isInTime ? 'put off' : 'put off, past its day'
  return isInTime ? 'due' : 'overdue'
}

function daysOf(input: RepairClockInput): Days | ReturnType<typeof refuse> {
  const { detectedOn, firstAttemptOn, repairedOn, deferred, today } = input
  const written = { detectedOn, firstAttemptOn, repairedOn, until: deferred?.until ?? null, today }
  for (const [field, day] of Object.entries(written)) {
    if (day !== null && calendarDayOf(day) === null)
      return refuse('clock/not-a-day', field, `a day is written as 2026-03-01, not ${day}`)
  }
  const read = (day: string | null) => (day === null ? null : calendarDayOf(day))
  const found = read(detectedOn) ?? calendarDay(0)
  const now = read(today) ?? calendarDay(0)
  for (const [field, day] of Object.entries({ detectedOn, firstAttemptOn, repairedOn })) {
    const at = read(day)
    if (at !== null && at > now) return refuse('clock/after-today', field, `${day} is after today, ${today}`)
    if (at !== null && at < found)
      return refuse('clock/before-it-was-found', field, `${day} is before the leak was found, ${detectedOn}`)
  }
  return {
    detectedOn: found,
    firstAttemptOn: read(firstAttemptOn),
    repairedOn: read(repairedOn),
    until: read(written.until),
    today: now,
  }
}

function earlier(one: CalendarDay | null, other: CalendarDay | null): CalendarDay | null {
  if (one === null || other === null) return one ?? other
  return one < other ? one : other
}
