import { bedInShare, type WearParameters } from './prior.ts'

/**
 * What the readings of one life say of its level and its rate. The level is that of the reserve with the bed-in so far
 * added back, which falls in a straight line but for chance: given a rate, it is normal about a mean linear in the rate.
 */
export interface Filtered {
  /** Days since the repack at which the level stands. */
  readonly age: number
  /** Mean of the level is levelAtNoWear + levelByRate × rate: mm, and mm for each mm a day. */
  readonly levelAtNoWear: number
  readonly levelByRate: number
  /** mm² */
  readonly levelVariance: number
  /** Log-likelihood of a rate is logConstant + pull × rate - information × rate² / 2, but for ln(2π) / 2 a step. */
  readonly information: number
  readonly pull: number
  readonly logConstant: number
}

/** A stretch of one or more lives laid end to end. */
export interface Stretch {
  /** Days since the repack, in order. */
  readonly ages: ArrayLike<number>
  readonly reserves: ArrayLike<number>
  readonly from: number
  /** At least one. */
  readonly count: number
}

/**
 * Runs through the readings of a life once, for all rates together: a Kalman filter whose mean is linear in the rate.
 *
 *     days of wear    = age + bed-in days × bed-in share
 *     fall            = rate × days of wear + bed-in fall × bed-in share + chance
 *     chance          has variance process variance × days of wear + bed-in fall variance × (change of share)²
 *     a reading       is the level plus an error of the reading variance
 *
 * The level before the first reading is taken to be unknown. Exact: equal to generalised least squares.
 *
 * @source SRC-700 the wear model · SRC-702 the filter (docs/sources.md)
 * @returns the level at the last reading, and the quadratic that the log-likelihood is in the rate
 */
export function filterLife(wear: WearParameters, { ages, reserves, from, count }: Stretch): Filtered {
  const { readingVariance, processVariance, bedInDays, bedInFall, bedInFallVariance } = wear
  let age = ages[from]!
  let share = bedInShare(wear, age)
  let levelAtNoWear = reserves[from]! + bedInFall * share
  let levelByRate = 0
  let levelVariance: number = readingVariance
  let information = 0
  let pull = 0
  let misfit = 0
  for (let index = from + 1; index < from + count; index++) {
    const nextAge = ages[index]!
    const nextShare = bedInShare(wear, nextAge)
    const shareStep = nextShare - share
    const daysOfWear = nextAge - age + bedInDays * shareStep
    age = nextAge
    share = nextShare
    levelByRate -= daysOfWear
    levelVariance += processVariance * daysOfWear + bedInFallVariance * shareStep * shareStep
    const surprise = reserves[index]! + bedInFall * share - levelAtNoWear
    const variance = levelVariance + readingVariance
    information += (levelByRate * levelByRate) / variance
    pull += (surprise * levelByRate) / variance
    misfit += (surprise * surprise) / variance + Math.log(variance)
    const gain = levelVariance / variance
    levelAtNoWear += gain * surprise
    levelByRate *= 1 - gain
    levelVariance *= 1 - gain
  }
  return { age, levelAtNoWear, levelByRate, levelVariance, information, pull, logConstant: -misfit / 2 }
}

/** A nut turned by hand stops within so much of the travel that was meant. */
const NIP_ERROR = 0.15

/**
 * How uncertain the travel of nips is that nobody measured: where between two nips it began and ended, and how exactly
 * a hand stops.
 *
 *     variance of the travel = step² / 6 + Σ (0.15 × travel)²      mm²
 *
 * @source SRC-703 nips as falls of the level (docs/sources.md)
 * @example varianceOfTravel({ travels: [], step: 6 }) // → 6
 */
export function varianceOfTravel({ travels, step }: { readonly travels: readonly number[]; readonly step: number }): number {
  return step ** 2 / 6 + travels.reduce((sum, each) => sum + (NIP_ERROR * each) ** 2, 0)
}

/**
 * Carries the level on to the last nip after the last reading.
 *
 * Turns of the nuts are counted, so the level sinks by their travel even where wear alone would not have asked for it;
 * for the rate the travel is one more fall over time, as uncertain as `varianceOfTravel` has it.
 *
 * @source SRC-703 nips as falls of the level (docs/sources.md)
 * @returns the level at the last nip, and the rate as it then is known
 */
export function afterNips(
  wear: WearParameters,
  filtered: Filtered,
  nips: { readonly age: number; readonly travels: readonly number[]; readonly step: number },
): Filtered {
  const shareStep = bedInShare(wear, nips.age) - bedInShare(wear, filtered.age)
  const daysOfWear = nips.age - filtered.age + wear.bedInDays * shareStep
  const travel = nips.travels.reduce((sum, each) => sum + each, 0)
  const travelVariance = varianceOfTravel(nips)
  const steadyFall = travel - wear.bedInFall * shareStep
  const variance = travelVariance + wear.processVariance * daysOfWear + wear.bedInFallVariance * shareStep ** 2
  return {
    ...filtered,
    age: nips.age,
    levelAtNoWear: filtered.levelAtNoWear - steadyFall,
    levelVariance: filtered.levelVariance + travelVariance,
    information: filtered.information + daysOfWear ** 2 / variance,
    pull: filtered.pull + (steadyFall * daysOfWear) / variance,
  }
}
