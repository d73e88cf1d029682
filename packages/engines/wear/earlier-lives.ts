import { filterLife } from './filter.ts'
import { type LifeRecord, seriesOf } from './life.ts'
import type { GroupPrior } from './prior.ts'
import { screened } from './screening.ts'

/** Prior of ln rate for one life. */
export interface LogRatePrior {
  readonly mean: number
  readonly variance: number
  /** Earlier lives of the valve that told something. */
  readonly lives: number
}

/** What one earlier life says of ln rate by itself. */
export interface LogRateSeen {
  readonly logRate: number
  readonly errorVariance: number
}

/** A rate with a larger relative error than this has no normal logarithm. */
const LARGEST_ERROR = 0.35

/**
 * The ln rate of a finished life from its own readings, where they tell it well enough.
 *
 *     rate = pull / information,  error = 1 / √information,  used when error / rate < 0.35
 *
 * @source SRC-707 earlier lives of a valve (docs/sources.md)
 * @returns null when the life tells too little
 */
export function logRateSeen({ pull, information }: { readonly pull: number; readonly information: number }): LogRateSeen | null {
  const relativeError = Math.sqrt(information) / pull
  if (!(information > 0 && pull > 0 && relativeError < LARGEST_ERROR)) return null
  return { logRate: Math.log(pull / information), errorVariance: relativeError ** 2 }
}

/**
 * The prior of a valve's present life: that of its group, drawn towards what its earlier lives showed.
 *
 *     valve's own mean   ~ N(group mean, valve share × variance + variance of the mean)
 *     ln rate of a life  ~ N(valve's own mean, (1 - valve share) × variance)
 *
 * @source SRC-707 earlier lives of a valve (docs/sources.md)
 * @returns the group's prior when no earlier life tells anything
 */
export function priorOfLife(prior: GroupPrior, seen: readonly LogRateSeen[]): LogRatePrior {
  const { logRate, logRateVariance, logRateMeanVariance } = prior.rate
  const betweenLives = (1 - prior.valveShare) * logRateVariance
  let mean = logRate
  let variance = prior.valveShare * logRateVariance + logRateMeanVariance
  for (const life of seen) {
    const gain = variance / (variance + betweenLives + life.errorVariance)
    mean += gain * (life.logRate - mean)
    variance *= 1 - gain
  }
  return { mean, variance: variance + betweenLives, lives: seen.length }
}

/** What the earlier records of a valve show, by the wear of its plant. A record that cannot be read tells nothing. */
export function seenInEarlierLives(prior: GroupPrior, earlierLives: readonly LifeRecord[]): LogRateSeen[] {
  return earlierLives.flatMap((life) => {
    const series = seriesOf(life)
    if (!series.ok || series.ages.length < 2) return []
    const { ages, reserves } = screened(prior.wear, series)
    return logRateSeen(filterLife(prior.wear, { ages, reserves, from: 0, count: ages.length })) ?? []
  })
}
