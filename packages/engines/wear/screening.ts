import type { Instant, Millimetre } from '@glandkeeper/units/quantity'
import { mm } from '@glandkeeper/units/quantity'
import type { LifeSeries } from './life.ts'
import { bedInShare, type WearParameters } from './prior.ts'

/** A reading that the forecast does not use. It stays in the record and is shown with this. */
export interface LeftOut {
  readonly at: Instant
  readonly reserve: Millimetre
  readonly why: 'before the repack' | 'far off its neighbours'
  /** Reserve less what its neighbours make likely; null where that is not the reason. */
  readonly off: Millimetre | null
}

export interface Screened {
  readonly ages: readonly number[]
  readonly reserves: readonly number[]
  readonly times: readonly Instant[]
  readonly leftOut: readonly LeftOut[]
}

/** Standard deviations off its neighbours from which a reading is taken for a slip of the pen, not for chance. */
const FAR_OFF = 4.5
const MOST_PASSES = 3
/** Turns the median of the absolute residuals into a standard deviation, for normal errors. */
const NORMAL_SCALE = 1.4826
/** Fewer residuals than this have no median worth the name. */
const LEAST_RESIDUALS = 30

/**
 * Leaves out gross errors: readings between two others that stand far off the line between these.
 *
 *     residual = (level - line between the neighbours) / √(1 + w² + (1 - w)²)     w share of the wear days between them
 *     far off  = residual above 4.5 × the reading error of the plant
 *
 * The worst is dropped, then all is looked at again, up to three times. The first and the last reading have one
 * neighbour only and cannot be screened: ask for a second reading when `surpriseOf` is above 3.
 *
 * @source SRC-705 screening of gross errors (docs/sources.md)
 * @param readingError standard deviation of a good reading, mm: of the prior, or of the plant's own residuals in a fit
 * @returns what is used, and what is left out and why
 */
export function screened(
  wear: WearParameters,
  series: LifeSeries,
  readingError: number = Math.sqrt(wear.readingVariance),
): Screened {
  let { ages, reserves, times } = series
  const leftOut: LeftOut[] = series.beforeRepack.map(({ at, reserve }) => ({ at, reserve, why: 'before the repack', off: null }))
  for (let pass = 0; pass < MOST_PASSES && ages.length > 2; pass++) {
    const worst = worstOf(pointsOf(wear, ages, reserves), FAR_OFF * readingError)
    if (!worst) break
    const isKept = (_: unknown, index: number) => index !== worst.index
    leftOut.push({
      at: times[worst.index]!,
      reserve: mm(reserves[worst.index]!),
      why: 'far off its neighbours',
      off: mm(worst.off),
    })
    ages = ages.filter(isKept)
    reserves = reserves.filter(isKept)
    times = times.filter(isKept)
  }
  return { ages, reserves, times, leftOut }
}

/**
 * Reading error of a plant before anything is fitted, from how far readings lie off their neighbours.
 *
 *     1.4826 × median |residual| over all readings between two others      mm
 *
 * Half of the readings may be wrong before it is. One life has too few residuals: its own gross error would hide itself.
 *
 * @source SRC-705 screening of gross errors (docs/sources.md)
 * @returns that of the settings when there are fewer than 30 residuals
 */
export function readingErrorOf(wear: WearParameters, lives: readonly LifeSeries[]): number {
  const residuals: number[] = []
  for (const { ages, reserves } of lives) {
    const points = pointsOf(wear, ages, reserves)
    for (let index = 1; index < points.length - 1; index++)
      residuals.push(Math.abs(residualOf(points[index]!, points[index - 1]!, points[index + 1]!).residual))
  }
  const median = residuals.toSorted((one, other) => one - other)[residuals.length >> 1] ?? 0
  const isEnough = residuals.length >= LEAST_RESIDUALS && median > 0
  return isEnough ? NORMAL_SCALE * median : Math.sqrt(wear.readingVariance)
}

/** A reading where wear is a straight line: bed-in added back, days counted as days of wear. */
interface Point {
  readonly wornDays: number
  readonly level: number
}

function pointsOf(wear: WearParameters, ages: readonly number[], reserves: readonly number[]): Point[] {
  return ages.map((age, index) => {
    const share = bedInShare(wear, age)
    return { wornDays: age + wear.bedInDays * share, level: reserves[index]! + wear.bedInFall * share }
  })
}

function worstOf(points: readonly Point[], limit: number): { readonly index: number; readonly off: number } | null {
  let worst: { readonly index: number; readonly off: number; readonly size: number } | null = null
  for (let index = 1; index < points.length - 1; index++) {
    const { off, residual } = residualOf(points[index]!, points[index - 1]!, points[index + 1]!)
    const size = Math.abs(residual)
    if (size > limit && (!worst || size > worst.size) && !isEndAtFault(points, index, limit)) worst = { index, off, size }
  }
  return worst
}

/** Off the line through two others, and that over its spread for readings of error 1. */
function residualOf(point: Point, one: Point, other: Point): { readonly off: number; readonly residual: number } {
  const span = other.wornDays - one.wornDays
  const share = span > 0 ? (point.wornDays - one.wornDays) / span : 0.5
  const off = point.level - (one.level + share * (other.level - one.level))
  return { off, residual: off / Math.sqrt(1 + share * share + (1 - share) * (1 - share)) }
}

/** The neighbour of a wrong end looks wrong too, but it is in line with the two on its other side. */
function isEndAtFault(points: readonly Point[], index: number, limit: number): boolean {
  const last = points.length - 1
  const isInLine = (one: number, other: number) =>
    one > 0 && other < last && Math.abs(residualOf(points[index]!, points[one]!, points[other]!).residual) <= limit
  return (index === 1 && isInLine(index + 1, index + 2)) || (index === last - 1 && isInLine(index - 2, index - 1))
}
