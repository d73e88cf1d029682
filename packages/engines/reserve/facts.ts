import type { Instant, Millimetre, Ppmv, Turn } from '@glandkeeper/units/quantity'

/** How much is seen to leak, in our own words. `dry` is an observation too. */
export type LeakGrade = 'dry' | 'damp' | 'weep' | 'drip' | 'run'
/** From nothing to a steady run: the worse, the later. */
export const gradesRising: readonly LeakGrade[] = ['dry', 'damp', 'weep', 'drip', 'run']

/** What the arithmetic needs of an entry from the field. The contract's entries carry more. */
export type Fact =
  | {
      readonly kind: 'reading.taken'
      readonly gapLeft: Millimetre | null
      readonly gapRight: Millimetre | null
      readonly threadRemaining: Millimetre | null
      readonly stem: string | null
      readonly leak: LeakGrade | null
    }
  | {
      readonly kind: 'gland.nipped'
      readonly turnsLeft: Turn
      readonly turnsRight: Turn
      readonly stem: string | null
      readonly leakBefore: LeakGrade | null
      readonly leakAfter: LeakGrade | null
    }
  | {
      readonly kind: 'leak.seen'
      readonly leak: LeakGrade
      /** Above background; null where no meter was held to it. */
      readonly netScreening: Ppmv | null
    }
  | {
      readonly kind: 'leak.treated'
      readonly treatment: string
      readonly leakBefore: LeakGrade | null
      readonly leakAfter: LeakGrade | null
    }
  | { readonly kind: 'repair.deferred'; readonly until: string | null }
  | {
      readonly kind: 'packing.renewed'
      readonly gapLeft: Millimetre | null
      readonly gapRight: Millimetre | null
      readonly family: string
      readonly rings: number | null
      readonly proved: boolean | null
    }
  | { readonly kind: 'ring.added'; readonly gapLeft: Millimetre | null; readonly gapRight: Millimetre | null }
  | { readonly kind: 'visit.missed' }

/**
 * Could a fact of this kind have moved the follower, or told where it stands?
 *
 * @example movesFollower('leak.seen') // → false
 */
export function movesFollower(kind: Fact['kind']): boolean {
  return kind === 'reading.taken' || kind === 'gland.nipped' || kind === 'packing.renewed' || kind === 'ring.added'
}

/**
 * Does a fact of this kind say that somebody was at the valve? A missed visit and a decision do not.
 *
 * @example wasAtValve('repair.deferred') // → false
 */
export function wasAtValve(kind: Fact['kind']): boolean {
  return kind !== 'visit.missed' && kind !== 'repair.deferred'
}

/** A fact with its name and its time: when it happened, not when it arrived. */
export interface DatedFact<Told = Fact> {
  readonly id: string
  readonly takenAt: Instant
  readonly fact: Told
}

/** Changes what an earlier fact says, or takes it back when there is no replacement. */
export interface Correction<Told = Fact> {
  readonly id: string
  readonly takenAt: Instant
  readonly corrects: string
  readonly replacement: { readonly takenAt: Instant; readonly fact: Told } | null
}

/** How an entry stands once corrections are applied. */
export type EntryStanding = 'as entered' | 'corrected' | 'taken back'

export interface StandingFact<Told = Fact> extends DatedFact<Told> {
  readonly standsAs: EntryStanding
}

/**
 * The facts as they stand: of several corrections of one fact the latest holds, and order is by the time taken.
 * Equal times are ordered by id, so that devices that send in any order end with the same history.
 * A correction whose fact has not arrived yet changes nothing until it does. What a fact tells is not looked at.
 */
export function factsAsTheyStand<Told = Fact>(
  facts: readonly DatedFact<Told>[],
  corrections: readonly Correction<Told>[],
): { readonly standing: StandingFact<Told>[]; readonly takenBack: DatedFact<Told>[] } {
  const latest = new Map<string, Correction<Told>>()
  for (const correction of corrections.toSorted(byTimeThenId)) latest.set(correction.corrects, correction)
  const standing: StandingFact<Told>[] = []
  const takenBack: DatedFact<Told>[] = []
  for (const dated of facts) {
    const correction = latest.get(dated.id)
    if (!correction) standing.push({ ...dated, standsAs: 'as entered' })
    else if (correction.replacement) standing.push({ id: dated.id, ...correction.replacement, standsAs: 'corrected' })
    else takenBack.push(dated)
  }
  return { standing: standing.toSorted(byTimeThenId), takenBack }
}

function byTimeThenId(a: { takenAt: number; id: string }, b: { takenAt: number; id: string }): number {
  return a.takenAt - b.takenAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
}
