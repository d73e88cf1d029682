import { type Day, type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { DUST, firstNotCount, firstNotLength, firstNotLengthOrNought, firstNotShare, inMillimetres } from './dimensions.ts'

export type TopUpAdvice = 'adjust only' | 'top up with one ring' | 'full repack'

export interface TopUpReason {
  readonly code: `top-up/${string}`
  readonly detail: string
}

/** When a top-up ring is thought of, and when it no longer helps. */
export interface TopUpLimits {
  /** At this reserve or less there is nothing left to adjust. */
  readonly reserve: Millimetre
  /** So many rings may be added in one packing life. */
  readonly rings: number
  /** From this share of the usual life on the old rings are taken for hardened. */
  readonly ageShare: Ratio
}

/** Settings of ours, not published values. */
export const topUpLimits: TopUpLimits = { reserve: mm(2), rings: 1, ageShare: ratio(0.7) }

interface AgeingGland {
  readonly ageOfPacking: Day
  /** Usual life of this family in this service; null where none is known. */
  readonly usualLife: Day | null
  /** Travel left; 0 or less is none. */
  readonly reserve: Millimetre
  /** Nose in the box now: depth from the face down to the packing. */
  readonly followerEntry: Millimetre
  readonly section: Millimetre
  readonly leastEngagement: Millimetre
  /** Rings added since the last full repack. */
  readonly topUpRings: number
  readonly dieFormed: boolean
  /** The leak came back, or stayed, after the gland was taken up. */
  readonly leakPersists: boolean
  readonly limits?: TopUpLimits
}

const STOP_GAP: TopUpReason = {
  code: 'top-up/stop-gap',
  detail: 'a ring on top of hardened rings is a stop-gap: plan the full repack',
}
const ISOLATE: TopUpReason = {
  code: 'top-up/isolate',
  detail: 'never open a gland under pressure: isolate, lock, drain, vent and prove zero; site procedure and permit decide',
}

/**
 * Whether to go on adjusting, add one ring on top, or repack in full.
 *
 *     adjust only : reserve > limit, and the leak stops when the gland is taken up
 *     full repack : otherwise, if the leak persists with travel left, or the set is die-formed, or rings were added
 *                   before, or age >= share · usual life, or entry - section < least engagement
 *     top up      : otherwise
 *
 * Only a recommendation with its reasons; it knows nothing of the state of stem and box, and a leak with no travel left
 * may have any cause. Every limit is yours to change.
 *
 * @source SRC-121 common practice · SRC-122 limits, set by us · SRC-103 reserve (docs/sources.md)
 * @returns the advice, its reasons, and cautions for whoever opens the gland (none where it stays shut)
 * @example topUpAdvice({ ageOfPacking: days(200), usualLife: days(900), reserve: mm(1), followerEntry: mm(17), section: mm(8), leastEngagement: mm(3.2), topUpRings: 0, dieFormed: false, leakPersists: false }).advice // → 'top up with one ring'
 */
export function topUpAdvice(
  gland: AgeingGland,
): Outcome<{ advice: TopUpAdvice; reasons: readonly TopUpReason[]; cautions: readonly TopUpReason[] }> {
  const { reserve, leakPersists, limits = topUpLimits } = gland
  const fault = faultOf(gland, limits)
  if (fault) return fault
  const canAdjust = reserve > limits.reserve
  if (canAdjust && !leakPersists) {
    const detail = `${inMillimetres(reserve)} of travel is left, more than ${inMillimetres(limits.reserve)}`
    return { ok: true, advice: 'adjust only', reasons: [{ code: 'top-up/travel-left', detail }], cautions: [] }
  }
  const against = reasonsToRepack(gland, limits, canAdjust)
  if (against.length > 0) return { ok: true, advice: 'full repack', reasons: against, cautions: [ISOLATE] }
  return { ok: true, advice: 'top up with one ring', reasons: reasonsToTopUp(gland), cautions: [STOP_GAP, ISOLATE] }
}

function reasonsToRepack(gland: AgeingGland, limits: TopUpLimits, canAdjust: boolean): TopUpReason[] {
  const { ageOfPacking, usualLife, followerEntry, section, leastEngagement, topUpRings, dieFormed, leakPersists } = gland
  const reasons: TopUpReason[] = []
  if (canAdjust && leakPersists) {
    reasons.push({ code: 'top-up/leak-persists', detail: 'taking up no longer stops the leak although travel is left' })
  }
  if (dieFormed) {
    reasons.push({
      code: 'top-up/die-formed',
      detail: 'a die-formed set is renewed as a set: cord on top of it does not load it evenly',
    })
  }
  if (topUpRings >= limits.rings) {
    const detail = `${topUpRings} rings were added in this packing life already, and ${limits.rings} is the most`
    reasons.push({ code: 'top-up/added-before', detail })
  }
  if (usualLife !== null && ageOfPacking >= limits.ageShare * usualLife - DUST) {
    const detail = `the packing is ${Math.round(ageOfPacking)} days old; it usually lasts ${Math.round(usualLife)} in all`
    reasons.push({ code: 'top-up/old', detail })
  }
  const entryOnNewRing = followerEntry - section
  if (!(entryOnNewRing >= leastEngagement - DUST)) {
    const entry = inMillimetres(Math.max(0, entryOnNewRing))
    const detail = `over another ring the follower would enter by only ${entry}, less than ${inMillimetres(leastEngagement)}`
    reasons.push({ code: 'top-up/no-room', detail })
  }
  return reasons
}

function reasonsToTopUp({ reserve, usualLife, followerEntry, section }: AgeingGland): TopUpReason[] {
  const left = inMillimetres(Math.max(0, reserve))
  const reasons: TopUpReason[] = [
    { code: 'top-up/reserve-used', detail: `only ${left} of travel is left` },
    { code: 'top-up/room', detail: `over one more ring the follower enters by ${inMillimetres(followerEntry - section)}` },
  ]
  if (usualLife === null) {
    reasons.push({
      code: 'top-up/life-unknown',
      detail: 'the usual life of this packing is not known: look whether the rings are hard',
    })
  }
  return reasons
}

function faultOf(gland: AgeingGland, limits: TopUpLimits) {
  const { ageOfPacking, usualLife, reserve, followerEntry, section, leastEngagement, topUpRings } = gland
  if (!(ageOfPacking >= 0 && ageOfPacking < Infinity)) {
    return refuse('top-up/age-not-known', 'ageOfPacking', `the age must be 0 days or more, not ${ageOfPacking}`)
  }
  if (usualLife !== null && !(usualLife > 0 && usualLife < Infinity)) {
    return refuse('number/not-positive', 'usualLife', `the usual life must be more than 0 days, not ${usualLife}`)
  }
  if (!Number.isFinite(reserve))
    return refuse('number/out-of-range', 'reserve', `the reserve must be a number of mm, not ${reserve}`)
  return (
    firstNotLength({ section }) ??
    firstNotLengthOrNought({ followerEntry, leastEngagement, 'limits.reserve': limits.reserve }) ??
    firstNotCount({ topUpRings, 'limits.rings': limits.rings }, 0) ??
    firstNotShare({ 'limits.ageShare': limits.ageShare })
  )
}
