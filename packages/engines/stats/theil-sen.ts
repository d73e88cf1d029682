import { type Outcome, refuse } from '../outcome.ts'
import { refusedConfidence, refusedFigures } from './admissible.ts'
import type { Point } from './least-squares.ts'
import { normalQuantile } from './normal.ts'

export interface MedianLine {
  readonly slope: number
  /** Confidence limits of the slope. */
  readonly slopeLower: number
  readonly slopeUpper: number
  /** Median y less slope times median x. */
  readonly interceptByMedians: number
  /** Median of y - slope x: half of the points lie above the line. */
  readonly interceptByResiduals: number
}

/** Pairs grow with the square of the points; this many take about a second. */
const MOST_POINTS = 3000

/**
 * The line of Theil and Sen: its slope is the median of the slopes of all pairs of points with different x.
 *
 * Up to 29 % of the points may be grossly wrong. The limits count pairs by the spread of Kendall's score, corrected for ties, and
 * are approximate below some ten points. Which of two intercepts is wanted is a convention; both are given.
 *
 * @source SRC-312 Theil-Sen line (docs/sources.md)
 * @returns slope, its limits and both intercepts, or a named problem
 * @example theilSen({ points: [{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 1 }], confidence: 0.95 }).slope // → 0.5
 */
export function theilSen(input: { readonly points: readonly Point[]; readonly confidence: number }): Outcome<MedianLine> {
  const { points, confidence } = input
  const refused =
    refusedConfidence(confidence) ??
    refusedFigures(
      'points',
      points.flatMap(({ x, y }) => [x, y]),
    )
  if (refused) return refused
  if (points.length > MOST_POINTS)
    return refuse(
      'line/too-many-points',
      'points',
      `${points.length} points are more than the ${MOST_POINTS} it compares in pairs`,
    )
  const slopes = slopesOfPairs(points)
  if (slopes.length === 0) return refuse('line/one-x', 'points', 'a slope needs two points with different x')
  const slope = medianOfSorted(slopes)
  const { lowest, highest } = ranksOfLimits(points, slopes.length, confidence)
  const line = {
    slope,
    slopeLower: slopes[lowest]!,
    slopeUpper: slopes[highest]!,
    interceptByMedians: median(points.map(({ y }) => y)) - slope * median(points.map(({ x }) => x)),
    interceptByResiduals: median(points.map(({ x, y }) => y - slope * x)),
  }
  return refusedFigures('points', Object.values(line)) ?? { ok: true, ...line }
}

function slopesOfPairs(points: readonly Point[]): Float64Array {
  const slopes: number[] = []
  for (const [index, one] of points.entries()) {
    for (let next = index + 1; next < points.length; next++) {
      const other = points[next]!
      if (other.x !== one.x) slopes.push((other.y - one.y) / (other.x - one.x))
    }
  }
  return Float64Array.from(slopes).toSorted()
}

/** Places of the two limits among the sorted slopes, counted from 0. */
function ranksOfLimits(points: readonly Point[], pairs: number, confidence: number): { lowest: number; highest: number } {
  const scoreVariance =
    (tiesTerm(points.length) - tiesWithin(points.map(({ x }) => x)) - tiesWithin(points.map(({ y }) => y))) / 18
  const reach = -normalQuantile((1 - confidence) / 2) * Math.sqrt(Math.max(0, scoreVariance))
  return {
    lowest: Math.max(Math.round((pairs - reach) / 2) - 1, 0),
    highest: Math.min(Math.round((pairs + reach) / 2), pairs - 1),
  }
}

function tiesTerm(count: number): number {
  return count * (count - 1) * (2 * count + 5)
}

function tiesWithin(values: readonly number[]): number {
  const counts = new Map<number, number>()
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1)
  return [...counts.values()].reduce((total, count) => total + tiesTerm(count), 0)
}

function median(values: readonly number[]): number {
  return medianOfSorted(Float64Array.from(values).toSorted())
}

function medianOfSorted(sorted: Float64Array): number {
  const middle = Math.floor(sorted.length / 2)
  if (sorted.length % 2 === 1) return sorted[middle]!
  return sorted[middle - 1]! / 2 + sorted[middle]! / 2
}
