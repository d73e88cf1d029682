import type { Filtered } from './filter.ts'
import type { RateMoments } from './posterior.ts'
import { bedInShare, type WearParameters } from './prior.ts'

/**
 * What a reading some days after the moment of the filter is likely to show.
 *
 *     expected  = level - rate × days of wear - bed-in fall × bed-in share then      mm
 *     variance  = level variance + wear's chance + reading variance + doubt about the rate
 *
 * @source SRC-700 the wear model (docs/sources.md)
 * @returns mean and standard deviation, mm
 */
export function expectedReading(
  wear: WearParameters,
  { filtered, rate, daysAhead }: { readonly filtered: Filtered; readonly rate: RateMoments; readonly daysAhead: number },
): { readonly expected: number; readonly deviation: number } {
  const share = bedInShare(wear, filtered.age + daysAhead)
  const shareStep = share - bedInShare(wear, filtered.age)
  const daysOfWear = daysAhead + wear.bedInDays * shareStep
  const byRate = filtered.levelByRate - daysOfWear
  const chance = wear.processVariance * daysOfWear + wear.bedInFallVariance * shareStep * shareStep
  return {
    expected: filtered.levelAtNoWear + byRate * rate.mean - wear.bedInFall * share,
    deviation: Math.sqrt(filtered.levelVariance + chance + wear.readingVariance + byRate * byRate * rate.variance),
  }
}
