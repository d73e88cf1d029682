import { addDays, type Day, type Instant } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'

/** What may call for the next look at a gland; the earliest decides. */
export type LookRule =
  | 'after a repack'
  | 'after a nip'
  | 'leak interval'
  | 'reserve'
  | 'longest time between looks'
  | 'never seen'

/** What is known of one gland for its next look. Null: not known, or not the case. */
export interface LookInput {
  /** The last time somebody saw the gland; null when nobody ever did. */
  readonly lastSeenAt: Instant | null
  /** When it was added to the register: the look of a gland nobody has seen counts from here. */
  readonly knownSince: Instant
  /** The repack, or nip, that nobody has looked at since. */
  readonly repackToFollow: Instant | null
  readonly nipToFollow: Instant | null
  /** Days from the last look until the wanted chance of an unseen leak is reached. */
  readonly leakInterval: Day | null
  /** When the chance that the travel is used up reaches what the site allows between looks. */
  readonly reserveReachedAt: Instant | null
  readonly rules: LookRules
}

export interface LookRules {
  readonly afterRepack: Day
  readonly afterNip: Day
  /** No routine look comes sooner after the last one than this; a follow-up may. */
  readonly leastBetween: Day
  /** Nor later than this, by criticality. */
  readonly mostBetween: Day
}

export interface NextLook {
  readonly at: Instant
  readonly rule: LookRule
  /** Every date that was weighed, the earliest first: why this one and not another. */
  readonly weighed: readonly { readonly rule: LookRule; readonly at: Instant }[]
}

/**
 * When to look at a gland next: the earliest of the follow-up after a repack or nip, the leak interval, the reserve,
 * and the longest time between looks.
 *
 *     follow-up  = repack or nip + days, while nobody has looked since
 *     leak       = last look + interval;  reserve = the day its chance is reached, both not sooner than the least time
 *     longest    = last look + days by criticality
 *
 * It knows nothing of rounds, closed areas or people: the plan of rounds moves the day within its window.
 *
 * @source SRC-720 rules of the next look (docs/sources.md)
 * @returns the day, the rule that decided and what else was weighed, or `look/rule-not-positive`
 * @example nextLook({ lastSeenAt: instant(0), knownSince: instant(0), repackToFollow: null, nipToFollow: null, leakInterval: days(40), reserveReachedAt: null, rules: { afterRepack: days(3), afterNip: days(1), leastBetween: days(7), mostBetween: days(90) } }).rule // → 'leak interval'
 */
export function nextLook(input: LookInput): Outcome<NextLook> {
  const { lastSeenAt, knownSince, repackToFollow, nipToFollow, leakInterval, reserveReachedAt, rules } = input
  for (const [field, value] of Object.entries({ ...rules, ...(leakInterval !== null && { leakInterval }) })) {
    if (!(value > 0 && value < FARTHEST_DAYS)) {
      return refuse('look/rule-not-positive', field, `a time between looks must be more than 0 days, not ${value}`)
    }
  }
  const from = lastSeenAt ?? knownSince
  const notSooner = (at: Instant): Instant => later(at, addDays(from, rules.leastBetween))
  const weighed: { rule: LookRule; at: Instant }[] = [
    lastSeenAt === null
      ? { rule: 'never seen', at: knownSince }
      : { rule: 'longest time between looks', at: addDays(from, rules.mostBetween) },
  ]
  if (repackToFollow !== null) weighed.push({ rule: 'after a repack', at: addDays(repackToFollow, rules.afterRepack) })
  if (nipToFollow !== null) weighed.push({ rule: 'after a nip', at: addDays(nipToFollow, rules.afterNip) })
  if (leakInterval !== null) weighed.push({ rule: 'leak interval', at: notSooner(addDays(from, leakInterval)) })
  if (reserveReachedAt !== null) weighed.push({ rule: 'reserve', at: notSooner(reserveReachedAt) })
  // Of two on one day the one weighed first: a follow-up before a routine.
  const ordered = weighed.toSorted((one, other) => one.at - other.at || order.indexOf(one.rule) - order.indexOf(other.rule))
  const first = ordered[0] ?? { rule: 'never seen', at: knownSince }
  return { ok: true, at: first.at, rule: first.rule, weighed: ordered }
}

const FARTHEST_DAYS = 100_000
const order: readonly LookRule[] = [
  'after a repack',
  'after a nip',
  'never seen',
  'reserve',
  'leak interval',
  'longest time between looks',
]

function later(one: Instant, other: Instant): Instant {
  return one > other ? one : other
}
