import { type Ratio, ratio } from '@glandkeeper/units/quantity'
import { filterLife } from './filter.ts'
import { type LivesEndToEnd, stretchOf } from './fit-lives.ts'
import type { GroupRates } from './fit-rates.ts'
import { expectedReading } from './next-reading.ts'
import { posteriorOfRate, rateMoments } from './posterior.ts'
import type { WearParameters } from './prior.ts'

/** A normal number lies within so many standard deviations four times out of five. */
const FOUR_IN_FIVE = 1.2815515655446004

/**
 * How often the last reading of a life lay where the readings before it put it: a check of the fit on real readings.
 *
 * @source SRC-709 fit of the priors (docs/sources.md)
 * @returns share inside the 80 % band; null without a life to look at
 */
export function nextReadingsWithin(
  lives: LivesEndToEnd,
  chosen: readonly number[],
  { wear, rates }: { readonly wear: WearParameters; readonly rates: GroupRates },
): Ratio | null {
  let inside = 0
  for (const index of chosen) {
    const stretch = stretchOf(lives, index)
    const group = rates.groups[lives.groupOf[index]!]!
    const filtered = filterLife(wear, { ...stretch, count: stretch.count - 1 })
    const posterior = posteriorOfRate(filtered, {
      mean: group.logRate,
      variance: group.logRateVariance + group.logRateMeanVariance,
    })
    const last = stretch.from + stretch.count - 1
    const daysAhead = lives.ages[last]! - filtered.age
    const { expected, deviation } = expectedReading(wear, { filtered, rate: rateMoments(posterior), daysAhead })
    if (Math.abs(lives.reserves[last]! - expected) <= FOUR_IN_FIVE * deviation) inside += 1
  }
  return chosen.length === 0 ? null : ratio(inside / chosen.length)
}
