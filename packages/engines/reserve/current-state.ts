import type { Instant, Millimetre } from '@glandkeeper/units/quantity'
import type { Gland } from '../gland/gland.ts'
import { movesFollower, type StandingFact, wasAtValve } from './facts.ts'
import type { ReserveFinding } from './findings.ts'
import { glandHistory, type GlandHistory, type Moment } from './gland-history.ts'
import type { ReserveLimit } from './reserve.ts'

/** Where one gland is now, by the last facts known of it. Nothing in it depends on today's date. */
export interface CurrentState {
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
  readonly gapIsInferred: boolean
  readonly reserve: Millimetre | null
  readonly limitedBy: ReserveLimit | null
  /** When it was first seen spent; null while travel is left. When it will be is the forecast's to say: see wear/forecast. */
  readonly spentSince: Instant | null
  readonly packedAt: Instant | null
  readonly packingFamily: string | null
  /** The last time somebody saw the gland; a missed visit does not count. */
  readonly lastSeenAt: Instant | null
  /** What stood out when the gland was last touched or read. */
  readonly findings: readonly ReserveFinding[]
}

/**
 * Sums a history up into the state the board shows.
 *
 * @example currentState(gland, standing).reserve // → 3.6
 */
export function currentState(gland: Gland, facts: readonly StandingFact[]): CurrentState {
  return summaryOf(glandHistory(gland, facts))
}

export function summaryOf({ moments, lives }: GlandHistory): CurrentState {
  const last = moments.at(-1)
  const life = lives.at(-1)
  const positions = moments.filter(({ kind }) => movesFollower(kind))
  return {
    gapLeft: last?.gapLeft ?? null,
    gapRight: last?.gapRight ?? null,
    gapIsInferred: last?.gapIsInferred ?? false,
    reserve: last?.reserve ?? null,
    limitedBy: last?.limitedBy ?? null,
    spentSince: spentSince(positions),
    packedAt: life?.from ?? null,
    packingFamily: life?.family ?? null,
    lastSeenAt: moments.findLast((moment) => wasAtValve(moment.kind))?.at ?? null,
    findings: positions.at(-1)?.findings ?? [],
  }
}

function spentSince(positions: readonly Moment[]): Instant | null {
  const levels = positions
    .slice(Math.max(lastLoaded(positions), 0))
    .flatMap(({ at, reserve }) => (reserve === null ? [] : [{ at, reserve }]))
  const last = levels.at(-1)
  if (!last || last.reserve > 0) return null
  const above = levels.findLastIndex((level) => level.reserve > 0)
  return levels[above + 1]?.at ?? last.at
}

function lastLoaded(positions: readonly Moment[]): number {
  return positions.findLastIndex((moment) => moment.kind === 'packing.renewed' || moment.kind === 'ring.added')
}
