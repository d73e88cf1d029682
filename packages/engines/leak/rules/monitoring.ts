import { type Outcome, refuse } from '../../outcome.ts'
import { type CalendarDay, calendarDay, calendarDayOf, writtenDay } from '../../stores/calendar-day.ts'
import { type LeakRuleSet, refusedDays, refusedMonitoring } from './rule.ts'

/** Difficult: out of reach from the floor or a landing. Unsafe: reaching it is a danger. */
export type MonitoredKind = 'ordinary' | 'difficult' | 'unsafe'

export interface MonitoringLook {
  /** As `2026-03-01`. */
  readonly on: string
  readonly leaks: boolean
}

export interface MonitoringInput {
  readonly kind: MonitoredKind
  /** In any order; of two on one day the later in the list is the later look. */
  readonly looks: readonly MonitoringLook[]
  /** The day the valve came under the rule. */
  readonly since: string
  readonly rule: Pick<LeakRuleSet, 'everyDays' | 'lengthening' | 'difficultEveryDays'>
  /** As stepByPercent gives it for all valves of the site. */
  readonly siteEveryDays?: number
  readonly today: string
}

export type MonitoringReason =
  | 'at first'
  | 'after clean looks'
  | 'after a leak'
  | 'by percent leaking'
  | 'difficult to monitor'
  | 'unsafe to monitor'

export interface NextMonitoring {
  /** Null for a valve that is unsafe to monitor: when it is safe, by a written plan. */
  readonly dueOn: string | null
  readonly everyDays: number | null
  /** Looks without a leak since the last one with. */
  readonly cleanInARow: number
  readonly isOverdue: boolean
  readonly reason: MonitoringReason
}

type Interval = Pick<NextMonitoring, 'reason'> & { readonly everyDays: number }

/**
 * The day a valve is to be monitored next.
 *
 *     due = last look, or the day it came under the rule, + days between looks
 *     days = those of the rule; longer after enough clean looks in a row, or where few of all valves leak
 *
 * A valve that leaked keeps its own days until it has been clean as often as the first step asks (once where there is no step),
 * whatever the percent of the site. Calendar months and quarters are not known here: the rule gives days.
 *
 * @source SRC-755 lengthening and shortening by looks · SRC-762 its own days after a leak (docs/sources.md)
 * @returns the day and why, or `monitoring/not-a-day`, `monitoring/after-today`, `rule/…`
 * @example nextMonitoring({ kind: 'ordinary', looks: [{ on: '2026-01-05', leaks: false }, { on: '2026-02-02', leaks: false }], since: '2026-01-01', rule: { everyDays: 28, lengthening: [{ cleanLooks: 2, everyDays: 90 }], difficultEveryDays: 365 }, today: '2026-03-01' }) // → { ok: true, dueOn: '2026-05-03', everyDays: 90, cleanInARow: 2, isOverdue: false, reason: 'after clean looks' }
 */
export function nextMonitoring(input: MonitoringInput): Outcome<NextMonitoring> {
  const { kind, looks, since, rule, siteEveryDays, today } = input
  const refused = refusedMonitoring(rule) ?? (siteEveryDays === undefined ? null : refusedDays({ siteEveryDays }, 1))
  if (refused) return refused
  const now = calendarDayOf(today)
  const start = calendarDayOf(since)
  if (now === null) return notADay('today', today)
  if (start === null) return notADay('since', since)
  const read = looksInOrder(looks, now)
  if ('problem' in read) return read
  const cleanInARow = read.length - 1 - read.findLastIndex(({ leaks }) => leaks)
  if (kind === 'unsafe')
    return { ok: true, dueOn: null, everyDays: null, cleanInARow, isOverdue: false, reason: 'unsafe to monitor' }
  const hasLeaked = cleanInARow < read.length
  const { everyDays, reason } =
    kind === 'difficult'
      ? { everyDays: rule.difficultEveryDays, reason: 'difficult to monitor' as const }
      : intervalOf(rule, cleanInARow, hasLeaked, siteEveryDays ?? 0)
  const due = calendarDay((read.at(-1)?.day ?? start) + everyDays)
  return { ok: true, dueOn: writtenDay(due), everyDays, cleanInARow, isOverdue: now > due, reason }
}

function intervalOf(
  { everyDays, lengthening }: MonitoringInput['rule'],
  cleanInARow: number,
  hasLeaked: boolean,
  siteEveryDays: number,
): Interval {
  if (hasLeaked && cleanInARow < (lengthening[0]?.cleanLooks ?? 1)) return { everyDays, reason: 'after a leak' }
  const step = lengthening.findLast(({ cleanLooks }) => cleanInARow >= cleanLooks)
  const own: Interval = step
    ? { everyDays: step.everyDays, reason: 'after clean looks' }
    : { everyDays, reason: hasLeaked ? 'after clean looks' : 'at first' }
  return siteEveryDays > own.everyDays ? { everyDays: siteEveryDays, reason: 'by percent leaking' } : own
}

function looksInOrder(
  looks: readonly MonitoringLook[],
  now: CalendarDay,
): { readonly day: CalendarDay; readonly leaks: boolean }[] | ReturnType<typeof refuse> {
  const read: { day: CalendarDay; leaks: boolean }[] = []
  for (const { on, leaks } of looks) {
    const day = calendarDayOf(on)
    if (day === null) return notADay('looks', on)
    if (day > now) return refuse('monitoring/after-today', 'looks', `a look on ${on} is after today`)
    read.push({ day, leaks })
  }
  return read.toSorted((one, other) => one.day - other.day)
}

function notADay(field: string, given: string) {
  return refuse('monitoring/not-a-day', field, `a day is written as 2026-03-01, not ${given}`)
}
