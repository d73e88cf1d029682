import { daysBetween, type Instant, type Millimetre } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'

export interface ReserveReading {
  readonly at: Instant
  /** Travel still usable; below zero when the follower has gone past what is kept clear. */
  readonly reserve: Millimetre
}

export interface Nip {
  readonly at: Instant
  /** How far the follower sank; negative when the nuts were slackened. */
  readonly travel: Millimetre
}

/** What is known of one packing life: from one repack to the next, or to now. */
export interface LifeRecord {
  /** In any order. */
  readonly readings: readonly ReserveReading[]
  readonly nips: readonly Nip[]
  /** Null when nobody knows: bed-in is then taken to be over. */
  readonly repackedAt: Instant | null
  /** The valve's own step: travel of half a turn of its nuts. */
  readonly step: Millimetre
}

/** The readings of one life as plain numbers, in order of time. */
export interface LifeSeries {
  /** Days since the repack. */
  readonly ages: readonly number[]
  /** mm */
  readonly reserves: readonly number[]
  readonly times: readonly Instant[]
  readonly beforeRepack: readonly ReserveReading[]
}

/** Added to every age where the repack date is unknown, in days: bed-in is over by any measure. */
const LONG_BEDDED_IN = 100_000
/** Ten thousand years either side of 1970. Nothing later has a date on a screen, and differences stay exact. */
const FARTHEST_INSTANT = 3.2e14
/** No follower travels farther; more is a slip of units, and squares of it stay finite. */
const FARTHEST_TRAVEL = 1e6

/**
 * Puts the readings of a life in order of time and gives each its age.
 *
 *     age = days since the repack; 100 000 more than the days since the first reading where the repack is unknown
 *
 * Readings from before the repack belong to another life and are handed back apart.
 *
 * @source SRC-700 the wear model (docs/sources.md)
 * @returns ages in days, reserves in mm; or what about the record cannot be used
 * @example seriesOf({ readings: [], nips: [], repackedAt: null, step: mm(0) }).ok // → false
 */
export function seriesOf(life: LifeRecord): Outcome<LifeSeries> {
  const fault = faultOf(life)
  if (fault) return fault
  const { repackedAt } = life
  const ordered = isInOrder(life.readings) ? life.readings : life.readings.toSorted((one, other) => one.at - other.at)
  const own = repackedAt === null ? ordered : ordered.filter((reading) => reading.at >= repackedAt)
  const origin = repackedAt ?? own[0]?.at
  const ageAtOrigin = repackedAt === null ? LONG_BEDDED_IN : 0
  const ages = own.map((reading) => daysBetween(origin!, reading.at) + ageAtOrigin)
  const beforeRepack = own.length === ordered.length ? [] : ordered.slice(0, ordered.length - own.length)
  return {
    ok: true,
    ages,
    reserves: own.map((reading) => reading.reserve),
    times: own.map((reading) => reading.at),
    beforeRepack,
  }
}

function faultOf({ readings, nips, repackedAt, step }: LifeRecord): ReturnType<typeof refuse> | null {
  const noStep = firstNotPositive({ step })
  if (noStep) return noStep
  if (step > FARTHEST_TRAVEL) return outOfRange('step', `a step of ${step} mm`)
  if (repackedAt !== null && !isInstant(repackedAt)) return outOfRange('repackedAt', 'the repack date')
  for (const { at, reserve } of readings) {
    if (!isInstant(at)) return outOfRange('readings', 'the time of a reading')
    if (!(Math.abs(reserve) <= FARTHEST_TRAVEL)) return outOfRange('readings', `a reserve of ${reserve} mm`)
  }
  for (const { at, travel } of nips) {
    if (!isInstant(at)) return outOfRange('nips', 'the time of a nip')
    if (!(Math.abs(travel) <= FARTHEST_TRAVEL)) return outOfRange('nips', `a travel of ${travel} mm`)
  }
  return null
}

function outOfRange(field: string, what: string): ReturnType<typeof refuse> {
  return refuse('number/out-of-range', field, `${what} cannot be computed with`)
}

function isInstant(at: number): boolean {
  return Math.abs(at) <= FARTHEST_INSTANT
}

function isInOrder(readings: readonly ReserveReading[]): boolean {
  for (let index = 1; index < readings.length; index++) if (readings[index]!.at < readings[index - 1]!.at) return false
  return true
}
