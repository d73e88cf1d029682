import { type Day, days, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import type { StandingFact } from '../reserve/facts.ts'
import { poissonLimits, type RateLimits } from '../stats/poisson.ts'
import type { Leak } from './leaks.ts'
import { tightens } from './looks.ts'

/**
 * Days of a month, where months are a measure of time and no page of a calendar.
 *
 * @source SRC-792 a twelfth of 365.25 days (docs/sources.md)
 */
export const DAYS_PER_MONTH = 30.4375

export interface LeakExposure {
  readonly daysWatched: Day
  readonly daysLeaking: Day
  readonly daysDry: Day
  /** Opened in the time watched; a reopened leak is counted once, where it opened. */
  readonly leaks: number
  readonly nips: number
  readonly nipsPerDryMonth: number | null
  readonly leaksPerThousandMonths: number | null
}

/** The time from `from` until `to`, which itself is no part of it: years laid end to end count nothing twice. */
export interface WatchedTime {
  readonly facts: readonly StandingFact[]
  readonly leaks: readonly Pick<Leak, 'openedAt' | 'spells' | 'packedAt'>[]
  readonly from: Instant
  readonly to: Instant
}

/**
 * How long a gland was watched, and how much of that it leaked.
 *
 *     watched: from the first fact, or `from` where that is later, until `to`
 *     leaking: from each opening and reopening until seen dry, or `to`        dry: the rest
 *     leaks per 1,000 months: over all months watched        nips per month: over the dry ones
 *
 * A leak is known from the look that saw it, so leaking time is the least it was.
 *
 * @source SRC-792 days of a month (docs/sources.md)
 * @returns nought watched where `to` lies before the first fact; a rate is null where less than a day stands below the line
 * @example leakExposure({ facts: standing, leaks: [], from: instant(0), to: addDays(instant(0), days(30)) }).daysDry // → 30
 */
export function leakExposure({ facts, leaks, from, to }: WatchedTime): LeakExposure {
  const start = startOfWatch(facts, from)
  const isWatched = (at: Instant) => start !== null && at >= start && at < to
  const daysWatched = start === null ? days(0) : span(start, to)
  const spells = start === null ? [] : leaks.flatMap((leak) => leak.spells)
  const daysLeaking = start === null ? days(0) : openWithin(spells, start, to)
  const daysDry = days(daysWatched - daysLeaking)
  const opened = leaks.filter((leak) => isWatched(leak.openedAt)).length
  const nips = facts.filter(({ takenAt, fact }) => isWatched(takenAt) && tightens(fact)).length
  return {
    daysWatched,
    daysLeaking,
    daysDry,
    leaks: opened,
    nips,
    nipsPerDryMonth: daysDry < 1 ? null : (nips * DAYS_PER_MONTH) / daysDry,
    leaksPerThousandMonths: daysWatched < 1 ? null : (opened * 1000 * DAYS_PER_MONTH) / daysWatched,
  }
}

/**
 * Leaks per 1,000 months that one valve is watched, with exact 95 % limits.
 *
 *     rate = leaks · 30.4375 · 1,000 / days
 *
 * Holds where leaks come independently of each other; a few valves that leak again and again make the limits too narrow.
 *
 * @source SRC-309 exact limits of a Poisson mean · SRC-792 days of a month (docs/sources.md)
 * @param input.days watched, summed over valves
 * @returns per 1,000 valve-months; or `number/not-positive`, `number/not-a-count`, `number/out-of-range`
 * @example leakRate({ leaks: 1, days: days(30437.5) }).rate // → 1
 */
export function leakRate(input: { readonly leaks: number; readonly days: Day }): Outcome<RateLimits> {
  const exposure = input.days / DAYS_PER_MONTH / 1000
  const limits = poissonLimits({ events: input.leaks, exposure, confidence: 0.95 })
  if (limits.ok) return limits
  if (limits.problem.field === 'events')
    return refuse(limits.problem.code, 'leaks', `leaks are counted, 0 or more, not ${input.leaks}`)
  return refuse(limits.problem.code, 'days', `no rate over ${input.days} days`)
}

/**
 * When the watch of a gland begins; null where nothing is known of it.
 *
 * @example startOfWatch([], instant(0)) // → null
 */
export function startOfWatch(facts: readonly StandingFact[], from: Instant): Instant | null {
  const first = facts[0]
  if (!first) return null
  return first.takenAt > from ? first.takenAt : from
}

/**
 * Days of these spells that lie between two moments; a spell without an end goes on.
 *
 * @example openWithin([{ from: instant(0), to: null }], instant(43_200_000), instant(86_400_000)) // → 0.5
 */
export function openWithin(spells: Leak['spells'], from: Instant, to: Instant): Day {
  const within = spells.map((spell) =>
    span(spell.from > from ? spell.from : from, spell.to !== null && spell.to < to ? spell.to : to),
  )
  return days(within.reduce((sum, each) => sum + each, 0))
}

function span(from: Instant, to: Instant): Day {
  return to > from ? daysBetween(from, to) : days(0)
}
