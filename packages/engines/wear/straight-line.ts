import { addDays, days, daysBetween, type Instant, type Millimetre } from '@glandkeeper/units/quantity'

export interface ReserveLevel {
  readonly at: Instant
  readonly reserve: Millimetre
}

export type StraightLineProblem =
  | { readonly code: 'straight-line/too-few-levels'; readonly levels: number }
  | { readonly code: 'straight-line/too-short'; readonly days: number }
  | { readonly code: 'straight-line/not-falling'; readonly millimetresPerDay: number }

export type StraightLineResult =
  | { readonly ok: true; readonly runsOutAt: Instant; readonly millimetresPerDay: number }
  | { readonly ok: false; readonly problem: StraightLineProblem }

const LEAST_LEVELS = 3
const LEAST_DAYS = 30
/** A line that meets zero in a hundred years says nothing more than one that never does. */
const FARTHEST_DAYS = 36_500

/**
 * A plain least-squares line through the levels of one packing life, run on from the last level to zero.
 *
 * A stop-gap, and named so: it knows nothing of bed-in, jumps or chance, and it is replaced by the wear model.
 *
 * @source SRC-301 least squares, checked against the certified values of the Norris set (docs/sources.md)
 * @param levels in order of time
 * @returns when the reserve is used up, or why no line can be drawn
 * @example runsOutOnStraightLine(levels) // → { ok: true, runsOutAt: 1787097600000, millimetresPerDay: 0.012 }
 */
export function runsOutOnStraightLine(levels: readonly ReserveLevel[]): StraightLineResult {
  const first = levels[0]
  const last = levels.at(-1)
  if (!first || !last || levels.length < LEAST_LEVELS)
    return { ok: false, problem: { code: 'straight-line/too-few-levels', levels: levels.length } }
  const span = daysBetween(first.at, last.at)
  if (span < LEAST_DAYS) return { ok: false, problem: { code: 'straight-line/too-short', days: span } }
  const slope = leastSquares(levels.map((level) => ({ x: daysBetween(first.at, level.at), y: level.reserve })))?.slope ?? 0
  const daysLeft = Math.max(last.reserve, 0) / -slope
  if (!(slope < 0) || daysLeft > FARTHEST_DAYS)
    return { ok: false, problem: { code: 'straight-line/not-falling', millimetresPerDay: -slope } }
  return { ok: true, runsOutAt: addDays(last.at, days(daysLeft)), millimetresPerDay: -slope }
}

/**
 * Intercept and slope of the line with the least sum of squared vertical distances.
 * Null without a point; level where all points share one x. Sums are taken about the means, which keeps the digits that a sum of raw squares loses.
 *
 * @example leastSquares([{ x: 0, y: 1 }, { x: 1, y: 3 }]) // → { intercept: 1, slope: 2 }
 */
export function leastSquares(
  points: readonly { readonly x: number; readonly y: number }[],
): { readonly intercept: number; readonly slope: number } | null {
  if (points.length === 0) return null
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / points.length
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / points.length
  const spread = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0)
  const together = points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0)
  const slope = spread === 0 ? 0 : together / spread
  return { intercept: meanY - slope * meanX, slope }
}
