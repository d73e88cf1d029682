import { type Outcome, refuse } from '../outcome.ts'
import { refusedConfidence, refusedFigures } from './admissible.ts'
import { studentQuantile } from './student-t.ts'

export interface Point {
  readonly x: number
  readonly y: number
}

/** A line and what is needed to say how far it may be trusted. Units: those of y, of x, and of y per x. */
export interface FittedLine {
  readonly intercept: number
  readonly slope: number
  readonly interceptError: number
  readonly slopeError: number
  /** Standard deviation of the points about the line. */
  readonly residualDeviation: number
  /** Number of points less 2. */
  readonly degreesOfFreedom: number
  readonly residualSquares: number
  readonly regressionSquares: number
  /** Share of the spread of y that the line explains; null when all y are equal. */
  readonly rSquared: number | null
  readonly meanX: number
  /** Sum of the squared distances of the x from their mean. */
  readonly spreadX: number
}

export interface PredictedValue {
  readonly value: number
  /** Limits of the line itself there. */
  readonly meanLower: number
  readonly meanUpper: number
  /** Limits of one further reading there. */
  readonly lower: number
  readonly upper: number
}

/**
 * The line with the least sum of squared vertical distances, with standard errors.
 *
 *     slope = Σ (x - x̄)(y - ȳ) / Σ (x - x̄)²        intercept = ȳ - slope x̄
 *
 * Sums are taken about the means, which keeps the digits that a sum of raw squares loses. The errors hold for independent
 * scatter of equal size in y and none in x; one gross error spoils the line (Theil and Sen's does not mind).
 *
 * @source SRC-301 least squares (docs/sources.md)
 * @returns the line, or a named problem: fewer than 3 points, or all at one x
 * @example fitLine([{ x: 0, y: 1 }, { x: 1, y: 3 }, { x: 2, y: 5 }]).slope // → 2
 */
export function fitLine(points: readonly Point[]): Outcome<FittedLine> {
  const count = points.length
  if (count < 3) return refuse('line/too-few-points', 'points', `a line with errors needs 3 points or more, not ${count}`)
  const meanX = mean(points.map(({ x }) => x))
  const meanY = mean(points.map(({ y }) => y))
  const spreadX = sum(points.map(({ x }) => (x - meanX) ** 2))
  if (spreadX === 0) return refuse('line/one-x', 'points', `all ${count} points have the same x`)
  const slope = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / spreadX
  const intercept = meanY - slope * meanX
  const residualSquares = sum(points.map(({ x, y }) => (y - meanY - slope * (x - meanX)) ** 2))
  const regressionSquares = slope * slope * spreadX
  const degreesOfFreedom = count - 2
  const residualDeviation = Math.sqrt(residualSquares / degreesOfFreedom)
  const total = residualSquares + regressionSquares
  const line: FittedLine = {
    intercept,
    slope,
    interceptError: residualDeviation * Math.sqrt(1 / count + (meanX * meanX) / spreadX),
    slopeError: residualDeviation / Math.sqrt(spreadX),
    residualDeviation,
    degreesOfFreedom,
    residualSquares,
    regressionSquares,
    rSquared: total === 0 ? null : regressionSquares / total,
    meanX,
    spreadX,
  }
  return refusedFigures('points', Object.values(line)) ?? { ok: true, ...line }
}

/**
 * The value of the line at one x, with the limits of the line there and of one further reading.
 *
 *     value ± t s √(1/n + (x - x̄)²/Σ(x - x̄)²)             the line
 *     value ± t s √(1 + 1/n + (x - x̄)²/Σ(x - x̄)²)         a reading
 *
 * Far outside the points the limits say what the scatter says, not whether the line goes on straight.
 *
 * @source SRC-301 least squares (docs/sources.md)
 * @returns the value and its limits, or a named problem
 * @example predictOnLine({ line: fitLine([{ x: 0, y: 1 }, { x: 1, y: 3 }, { x: 2, y: 5 }]), x: 5, confidence: 0.9 }).upper // → 11
 */
export function predictOnLine(input: {
  readonly line: FittedLine
  readonly x: number
  readonly confidence: number
}): Outcome<PredictedValue> {
  const { line, x, confidence } = input
  const refused = refusedConfidence(confidence) ?? refusedFigures('x', [x])
  if (refused) return refused
  const t = -studentQuantile((1 - confidence) / 2, line.degreesOfFreedom)
  const fromMean = x - line.meanX
  const leverage = 1 / (line.degreesOfFreedom + 2) + (fromMean / line.spreadX) * fromMean
  const value = line.intercept + line.slope * x
  const ofLine = t * line.residualDeviation * Math.sqrt(leverage)
  const ofReading = t * line.residualDeviation * Math.sqrt(1 + leverage)
  const predicted = {
    value,
    meanLower: value - ofLine,
    meanUpper: value + ofLine,
    lower: value - ofReading,
    upper: value + ofReading,
  }
  return refusedFigures('x', Object.values(predicted)) ?? { ok: true, ...predicted }
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

function mean(values: readonly number[]): number {
  const rough = sum(values) / values.length
  // A second pass takes away the rounding of the first.
  return rough + sum(values.map((value) => value - rough)) / values.length
}
