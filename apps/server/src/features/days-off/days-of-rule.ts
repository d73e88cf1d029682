import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays'
import { parseISO } from 'date-fns/parseISO'
import type { DaysOffModel } from '../../generated/sqlite/models.ts'
import { daysAfter } from '../../platform/local-time.ts'
import { Refusal } from '../../platform/problem.ts'
import { readRule } from './read-rule.ts'

/** First and last day, both with it, as `2026-05-04`. */
export interface DaySpan {
  readonly from: string
  readonly to: string
}

export type RepeatingDays = Pick<DaysOffModel, 'startsOn' | 'endsOn' | 'repeats'>

const MOST_OCCURRENCES = 1000
const MOST_DAYS_OF_ONE = 366
const MOST_YEARS_BEFORE = 100

const later = (one: string, other: string) => (one > other ? one : other)

/**
 * The days off within a span, the earliest first and each once. Days that come back come back as many as they were;
 * the first ones count even where the rule would not give them. Refused when the rule cannot be read or followed.
 *
 * @example daysOfRule({ startsOn: '2026-05-02', endsOn: '2026-05-03', repeats: 'FREQ=WEEKLY' }, { from: '2026-05-09', to: '2026-05-16' }) // → ['2026-05-09', '2026-05-10', '2026-05-16']
 */
export function daysOfRule({ startsOn, endsOn, repeats }: RepeatingDays, span: DaySpan): string[] {
  const length = differenceInCalendarDays(parseISO(endsOn), parseISO(startsOn)) + 1
  const firstDays = repeats === null ? [startsOn] : firstDaysOf({ rule: repeats, startsOn, length }, span)
  const days: string[] = []
  let next = span.from
  for (const first of firstDays) {
    const last = daysAfter(first, length - 1)
    for (next = later(first, next); next <= last && next <= span.to; next = daysAfter(next, 1)) days.push(next)
  }
  return days
}

interface Repetition {
  readonly rule: string
  readonly startsOn: string
  readonly length: number
}

/** The first day of each time they come, of those that reach into the span. */
function firstDaysOf({ rule, startsOn, length }: Repetition, { from, to }: DaySpan): string[] {
  const refuse = (why: string) => new Refusal('daysoff/rule', `${rule}: ${why}`)
  if (length > MOST_DAYS_OF_ONE) throw refuse(`more than ${MOST_DAYS_OF_ONE} days on end do not come back`)
  const { eachDay, count } = readRule(rule, startsOn)
  // The library counts from the first day on, a tenth of a second for a century of days.
  if (Number(to.slice(0, 4)) - Number(startsOn.slice(0, 4)) > MOST_YEARS_BEFORE)
    throw refuse(`begins more than ${MOST_YEARS_BEFORE} years before`)
  const reaching = daysAfter(from, 1 - length)
  const found: string[] = []
  let seen = 0
  let comesBack = false
  const see = (day: string): boolean => {
    if (day > to || seen === count || found.length > MOST_OCCURRENCES) return false
    seen += 1
    if (day >= reaching) found.push(day)
    return true
  }
  see(startsOn)
  eachDay((day) => {
    comesBack = true
    return day === startsOn || see(day)
  })
  if (!comesBack) throw refuse('the day never comes')
  if (found.length > MOST_OCCURRENCES) throw refuse(`comes more than ${MOST_OCCURRENCES} times from ${from} to ${to}`)
  return found
}
