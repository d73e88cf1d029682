import { daysBetween, type Millimetre, mm } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { knownOf } from './forecast.ts'
import type { LifeRecord, ReserveReading } from './life.ts'
import { expectedReading } from './next-reading.ts'
import { rateMoments } from './posterior.ts'
import { type GroupPrior, unusableIn } from './prior.ts'

export interface SurpriseInput {
  /** The life as it was before the new reading. */
  readonly life: LifeRecord
  readonly prior: GroupPrior
  readonly earlierLives: readonly LifeRecord[]
  readonly reading: ReserveReading
}

export interface Surprise {
  /** Standard deviations above what was expected: negative when less reserve is left. A plain number. */
  readonly score: number
  readonly expected: Millimetre
  readonly deviation: Millimetre
  /** Above 3 either way a slip is likelier than chance: the last reading of a life cannot be screened otherwise. */
  readonly asksForSecondReading: boolean
}

/** Standard deviations either way. */
export const SECOND_READING_FROM = 3

/**
 * How far a new reading lies from what the readings before it make likely.
 *
 *     score = (reading - expected) / √(level variance + wear's chance + reading variance + doubt about the rate)
 *
 * Holds for a reading after the last one of the life; one taken earlier is screened between its neighbours instead.
 *
 * @source SRC-705 screening of gross errors (docs/sources.md)
 * @returns the score with what was expected, or why nothing was
 * @example surpriseOf({ life: { readings: [], nips: [], repackedAt: null, step: mm(1) }, prior: defaultPrior, earlierLives: [], reading: { at: instant(0), reserve: mm(5) } }).ok // → false
 */
export function surpriseOf({ life, prior, earlierLives, reading }: SurpriseInput): Outcome<Surprise> {
  const unusable = unusableIn(prior)
  if (unusable) return refuse('forecast/unusable-prior', 'prior', `${unusable} of the prior is out of range`)
  if (!(Math.abs(reading.at) < Infinity)) return refuse('number/out-of-range', 'reading', 'the new reading has no date')
  // A nip after the new reading says nothing of what that reading should have been.
  const known = knownOf({ life: { ...life, nips: life.nips.filter((nip) => nip.at <= reading.at) }, prior, earlierLives })
  if (!known.ok) return known
  const daysAhead = daysBetween(known.countedFrom, reading.at)
  if (!(daysAhead >= 0)) return refuse('surprise/not-the-latest', 'reading', 'the life has a later reading or nip already')
  const rate = rateMoments(known.posterior)
  const { expected, deviation } = expectedReading(prior.wear, { filtered: known.filtered, rate, daysAhead })
  const score = (reading.reserve - expected) / deviation
  if (!Number.isFinite(score) || !Number.isFinite(deviation))
    return refuse('number/out-of-range', 'reading', 'the reading lies too far off to be computed with')
  return {
    ok: true,
    score,
    expected: mm(expected),
    deviation: mm(deviation),
    asksForSecondReading: Math.abs(score) > SECOND_READING_FROM,
  }
}
