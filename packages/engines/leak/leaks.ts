import { type Day, daysBetween, type Instant, type Ppmv } from '@glandkeeper/units/quantity'
import { gradesRising, type LeakGrade, type StandingFact } from '../reserve/facts.ts'
import { type Attempt, doingsOf, type Look } from './looks.ts'
import { countsAsLeak } from './visits.ts'

export interface LeakRule {
  /** A net screening value from here on is a leak; null: nobody screens. */
  readonly leakFrom: Ppmv | null
  /** A leak seen again up to so many days after it was seen dry is the same leak, unless the gland was repacked between. */
  readonly reopensWithin: Day
}

export interface LeakLook {
  readonly factId: string
  readonly at: Instant
  readonly grade: LeakGrade | null
  readonly netScreening: Ppmv | null
  readonly leaks: boolean
}

export interface LeakAttempt {
  readonly factId: string
  readonly at: Instant
  readonly by: Attempt
}

export interface Leak {
  /** Of the fact that opened it: stays when it is reopened. */
  readonly id: string
  readonly openedAt: Instant
  /** Every look while it was open, the opening one first; the one that saw it dry belongs to it. */
  readonly looks: readonly LeakLook[]
  /** None where it stopped by itself. */
  readonly attempts: readonly LeakAttempt[]
  readonly worst: LeakGrade | null
  readonly worstScreening: Ppmv | null
  readonly firstAttemptAt: Instant | null
  /** The look that saw it dry; null while nobody has. */
  readonly verified: { readonly factId: string; readonly at: Instant } | null
  readonly reopenedAt: readonly Instant[]
  /** The times it was open, one more with each reopening; `to` is null while nobody has seen it dry. */
  readonly spells: readonly { readonly from: Instant; readonly to: Instant | null }[]
  /** The last decision while it was open, also where that was before a reopening. */
  readonly deferred: { readonly factId: string; readonly at: Instant; readonly until: string | null } | null
  /** attempted: something was done after the last look that saw it leak, and nobody has seen it dry yet. */
  readonly state: 'open' | 'attempted' | 'verified'
  /** The packing in the box when it opened. */
  readonly packedAt: Instant | null
  readonly family: string | null
}

type Draft = {
  -readonly [Part in keyof Leak]: Leak[Part] extends readonly (infer Each)[] ? Each[] : Leak[Part]
}
type Packing = Pick<Leak, 'packedAt' | 'family'>

/**
 * The leaks of a gland, each from the look that saw it first to the look that saw it dry.
 *
 *     leaks: from a weep on, or net screening value >= leakFrom           the limit itself leaks: "10,000 ppm or greater"
 *     seen dry: a look that does not leak; where a meter alone ever saw this leak, only a meter can
 *     the same leak: seen again at most reopensWithin days after it was seen dry, with no repack between
 *
 * Looks before an attempt and after it on the spot are two looks of one fact. A look without grade and meter is none.
 *
 * @source SRC-790 what leaks to a meter · SRC-791 when a leak opens and ends (docs/sources.md)
 * @param facts as they stand, in order: see factsAsTheyStand
 * @returns in the order they opened; they do not overlap
 * @example leaksOf(standing, { leakFrom: ppmv(10_000), reopensWithin: days(14) }) // → []
 */
export function leaksOf(facts: readonly StandingFact[], rule: LeakRule): readonly Leak[] {
  const leaks: Draft[] = []
  let packing: Packing = { packedAt: null, family: null }
  let repackedSinceDry = false
  for (const { id: factId, takenAt: at, fact } of facts) {
    for (const doing of doingsOf(fact)) {
      const open = openOf(leaks)
      if (doing.kind === 'look') {
        const look = looked(doing, rule, { factId, at })
        if (open) lookAgain(open, look)
        else if (look.leaks) {
          openOrReopen(leaks, look, packing, repackedSinceDry ? null : rule.reopensWithin)
          repackedSinceDry = false
        }
      } else if (open) attempt(open, { factId, at, by: doing.by })
      else if (doing.by === 'repack') repackedSinceDry = true
    }
    if (fact.kind === 'packing.renewed') packing = { packedAt: at, family: fact.family }
    const open = openOf(leaks)
    if (fact.kind === 'repair.deferred' && open) open.deferred = { factId, at, until: fact.until }
  }
  return leaks
}

function openOf(leaks: readonly Draft[]): Draft | undefined {
  const last = leaks.at(-1)
  return last?.state === 'verified' ? undefined : last
}

function looked({ grade, netScreening }: Look, { leakFrom }: LeakRule, head: Pick<LeakLook, 'factId' | 'at'>): LeakLook {
  const screensAsLeak = leakFrom !== null && netScreening !== null && netScreening >= leakFrom
  return { ...head, grade, netScreening, leaks: screensAsLeak || (grade !== null && countsAsLeak(grade)) }
}

function opened(look: LeakLook, packing: Packing): Draft {
  return {
    id: look.factId,
    openedAt: look.at,
    looks: [look],
    attempts: [],
    worst: look.grade,
    worstScreening: look.netScreening,
    firstAttemptAt: null,
    verified: null,
    reopenedAt: [],
    spells: [{ from: look.at, to: null }],
    deferred: null,
    state: 'open',
    ...packing,
  }
}

function attempt(leak: Draft, made: LeakAttempt): void {
  leak.attempts.push(made)
  leak.firstAttemptAt ??= made.at
  leak.state = 'attempted'
}

function lookAgain(leak: Draft, look: LeakLook): void {
  note(leak, look)
  if (look.leaks) leak.state = 'open'
  else if (look.netScreening !== null || !leak.looks.some(seenByMeterAlone)) verify(leak, look)
}

function verify(leak: Draft, { factId, at }: LeakLook): void {
  leak.verified = { factId, at }
  leak.state = 'verified'
  const spell = leak.spells.pop()
  if (spell) leak.spells.push({ from: spell.from, to: at })
}

/** @param reopensWithin null after a repack: what leaks then is another leak */
function openOrReopen(leaks: Draft[], look: LeakLook, packing: Packing, reopensWithin: Day | null): void {
  const last = leaks.at(-1)
  const isSame = reopensWithin !== null && last?.verified && daysBetween(last.verified.at, look.at) <= reopensWithin
  if (last && isSame) reopen(last, look)
  else leaks.push(opened(look, packing))
}

function reopen(leak: Draft, look: LeakLook): void {
  note(leak, look)
  leak.verified = null
  leak.state = 'open'
  leak.reopenedAt.push(look.at)
  leak.spells.push({ from: look.at, to: null })
}

function note(leak: Draft, look: LeakLook): void {
  leak.looks.push(look)
  if (look.grade !== null && (leak.worst === null || gradesRising.indexOf(look.grade) > gradesRising.indexOf(leak.worst)))
    leak.worst = look.grade
  if (look.netScreening !== null && (leak.worstScreening === null || look.netScreening > leak.worstScreening))
    leak.worstScreening = look.netScreening
}

/** A glance proves nothing of a gas that nobody saw in the first place. */
function seenByMeterAlone({ leaks, grade }: LeakLook): boolean {
  return leaks && (grade === null || !countsAsLeak(grade))
}
