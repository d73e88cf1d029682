import { type Day, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import type { Fact, LeakGrade, StandingFact } from '../reserve/facts.ts'
import type { VisitSpan } from './interval.ts'

export interface VisitsOfGland {
  readonly spans: readonly VisitSpan[]
  /** Days from the last adjustment or repack to the last look; null where there was none of either. */
  readonly ageAtLastLook: Day | null
}

const leaking: ReadonlySet<LeakGrade> = new Set(['weep', 'drip', 'run'])

/**
 * From a weep on a gland counts as leaking; damp is a sign and no leak yet. Set by us.
 *
 * @example countsAsLeak('damp') // → false
 */
export function countsAsLeak(grade: LeakGrade): boolean {
  return leaking.has(grade)
}

/**
 * The visits of a gland that saw whether it leaked, as spans since it was last adjusted.
 *
 * A span runs from the last dry look, or from the adjustment, to this look. A leak that was seen and not yet taken up
 * goes on and tells nothing new until somebody adjusts the gland. A missed visit saw nothing.
 *
 * @source SRC-580 interval between visits (docs/sources.md)
 * @param facts as they stand, in order: see factsAsTheyStand
 * @example visitsOf([]) // → { spans: [], ageAtLastLook: null }
 */
export function visitsOf(facts: readonly StandingFact[]): VisitsOfGland {
  const spans: VisitSpan[] = []
  let adjustedAt: Instant | null = null
  let dryAt: Instant | null = null
  let isLeaking = false
  let lookedAt: Instant | null = null
  for (const { takenAt, fact } of facts) {
    const seen = seenIn(fact)
    if (seen !== null) lookedAt = takenAt
    if (seen !== null && adjustedAt !== null && !isLeaking) {
      isLeaking = countsAsLeak(seen)
      const from = daysBetween(adjustedAt, dryAt ?? adjustedAt)
      const to = daysBetween(adjustedAt, takenAt)
      if (to > from) spans.push({ from, to, leaked: isLeaking })
      dryAt = takenAt
    }
    if (adjusts(fact)) {
      adjustedAt = takenAt
      dryAt = null
      isLeaking = fact.kind === 'gland.nipped' && fact.leakAfter !== null && countsAsLeak(fact.leakAfter)
    }
  }
  const last = later(lookedAt, adjustedAt)
  return { spans, ageAtLastLook: adjustedAt === null || last === null ? null : daysBetween(adjustedAt, last) }
}

/** What was seen before anybody touched the gland; null where the entry does not say. */
function seenIn(fact: Fact): LeakGrade | null {
  switch (fact.kind) {
    case 'reading.taken':
    case 'leak.seen':
      return fact.leak
    case 'gland.nipped':
    case 'leak.treated':
      return fact.leakBefore
    case 'packing.renewed':
    case 'ring.added':
    case 'visit.missed':
    case 'repair.deferred':
      return null
  }
}

function adjusts(fact: Fact): boolean {
  return (
    fact.kind === 'packing.renewed' ||
    fact.kind === 'ring.added' ||
    (fact.kind === 'gland.nipped' && fact.turnsLeft + fact.turnsRight > 0)
  )
}

function later(one: Instant | null, other: Instant | null): Instant | null {
  if (one === null || other === null) return one ?? other
  return one > other ? one : other
}
