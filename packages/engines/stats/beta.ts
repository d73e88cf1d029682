import { logGamma, logLessRise, stirlingRest } from './log-gamma.ts'
import { rootByNewton } from './root.ts'

const MOST_TERMS = 1_000_000

export interface BetaShapes {
  /** Exponent of x plus 1; above 0. */
  readonly shapeBelow: number
  /** Exponent of 1 - x plus 1; above 0. */
  readonly shapeAbove: number
}

/**
 * Share of a beta distribution below x: the regularised incomplete beta function.
 *
 *     I(x) = 1/B ∫₀ˣ t^(shapeBelow-1) (1-t)^(shapeAbove-1) dt
 *
 * Relative error below 1e-12 for shapes up to 1e6 or so, growing to 1e-9 at 1e9. For the upper tail exchange the shapes and
 * give 1 - x.
 *
 * @source SRC-306 incomplete beta (docs/sources.md)
 * @param input.x from 0 to 1
 * @param input.rest 1 - x, where it is known more exactly than the difference
 * @returns from 0 to 1; NaN outside the domain
 * @example betaBelow({ shapeBelow: 2, shapeAbove: 1, x: 0.3 }) // → 0.09
 */
export function betaBelow(input: BetaShapes & { readonly x: number; readonly rest?: number }): number {
  const { x, rest = 1 - x } = input
  if (!areShapes(input) || !(x >= 0 && x <= 1)) return NaN
  return below(input.shapeBelow, input.shapeAbove, x, rest)
}

/**
 * The x below which the share p of a beta distribution lies. Inverse of betaBelow.
 *
 * @source SRC-306 incomplete beta (docs/sources.md)
 * @returns from 0 to 1, 0 also where x is smaller than the smallest double; NaN outside the domain
 * @example betaQuantile({ shapeBelow: 2, shapeAbove: 1, p: 0.09 }) // → 0.3
 */
export function betaQuantile(input: BetaShapes & { readonly p: number }): number {
  return 1 / (1 + Math.exp(-betaQuantileLogOdds(input)))
}

/**
 * ln(x / (1 - x)) of that quantile: keeps its digits at both ends, where x itself is 0 or 1 in a double.
 *
 * @returns -Infinity for p = 0, Infinity for p = 1; NaN outside the domain
 * @example betaQuantileLogOdds({ shapeBelow: 3, shapeAbove: 3, p: 0.5 }) // → 0
 */
export function betaQuantileLogOdds(input: BetaShapes & { readonly p: number }): number {
  const { shapeBelow, shapeAbove, p } = input
  if (!areShapes(input) || !(p >= 0 && p <= 1)) return NaN
  return p <= 0.5 ? logOddsFromBelow(shapeBelow, shapeAbove, p) : -logOddsFromBelow(shapeAbove, shapeBelow, 1 - p)
}

/**
 * Share of the beta distribution below x where x is so small that one term of the series is all: x may underflow, its logarithm
 * does not.
 *
 * @example betaBelowNearNought({ shapeBelow: 2, shapeAbove: 1 }, -300) * 1e260 // → Math.exp(-600) * 1e260
 */
export function betaBelowNearNought({ shapeBelow, shapeAbove }: BetaShapes, logX: number): number {
  return Math.exp(shapeBelow * logX - logBeta(shapeBelow, shapeAbove) - Math.log(shapeBelow))
}

function areShapes({ shapeBelow, shapeAbove }: BetaShapes): boolean {
  return shapeBelow > 0 && shapeAbove > 0 && shapeBelow < Infinity && shapeAbove < Infinity
}

function below(a: number, b: number, x: number, rest: number): number {
  if (x === 0) return 0
  if (rest === 0) return 1
  const share = (p: number, q: number, at: number, other: number) =>
    Math.min(1, (Math.exp(logHeight(p, q, at, other)) * fraction(p, q, at)) / p)
  return x < (a + 1) / (a + b + 2) ? share(a, b, x, rest) : 1 - share(b, a, rest, x)
}

/** ln of x^a (1-x)^b / B(a, b), from how far x is off the middle a / (a + b): no large numbers are subtracted. */
function logHeight(a: number, b: number, x: number, rest: number): number {
  const offMiddle = b * x - a * rest
  const whole = a + b
  return (
    a * logLessRise(x * (whole / a), offMiddle / a) +
    b * logLessRise(rest * (whole / b), -offMiddle / b) +
    Math.log((a / whole) * (b / (2 * Math.PI))) / 2 +
    stirlingRest(whole) -
    stirlingRest(a) -
    stirlingRest(b)
  )
}

function logBeta(a: number, b: number): number {
  const small = Math.min(a, b)
  const large = Math.max(a, b)
  if (large < 12) return logGamma(a) + logGamma(b) - logGamma(a + b)
  // ln Γ(large) - ln Γ(large + small) by Stirling's formula, without subtracting the two.
  const difference = small - (large + small - 0.5) * Math.log1p(small / large) - small * Math.log(large)
  return logGamma(small) + difference + stirlingRest(large) - stirlingRest(large + small)
}

/** The continued fraction of the incomplete beta function, by Lentz's method; for x below (a + 1) / (a + b + 2). */
function fraction(a: number, b: number, x: number): number {
  let c = 1
  let d = 1 / awayFromNought(1 - ((a + b) * x) / (a + 1))
  let product = d
  const take = (numerator: number) => {
    d = 1 / awayFromNought(1 + numerator * d)
    c = awayFromNought(1 + numerator / c)
    product *= d * c
  }
  for (let m = 1; m < MOST_TERMS; m++) {
    const place = a + 2 * m
    take(((m * (b - m)) / (place - 1)) * (x / place))
    take(((-(a + m) * (a + b + m)) / place) * (x / (place + 1)))
    if (Math.abs(d * c - 1) < 2e-16) break
  }
  return product
}

function awayFromNought(x: number): number {
  return Math.abs(x) < 1e-300 ? 1e-300 : x
}

function logOddsFromBelow(a: number, b: number, p: number): number {
  if (p === 0) return -Infinity
  const nearNought = (Math.log(p) + Math.log(a) + logBeta(a, b)) / a
  // So near to nought the first term of the series is all there is.
  if (nearNought < -40 - Math.log1p(b)) return nearNought
  const at = (logOdds: number) => {
    const x = 1 / (1 + Math.exp(-logOdds))
    const rest = 1 / (1 + Math.exp(logOdds))
    return { share: below(a, b, x, rest), height: Math.exp(logHeight(a, b, x, rest)) }
  }
  return rootByNewton({
    from: Math.max(-740, nearNought - 1 - Math.log1p(b)),
    to: 740,
    start: Math.log(a / b),
    valueAt: (logOdds) => Math.log(at(logOdds).share) - Math.log(p),
    slopeAt: (logOdds) => at(logOdds).height / at(logOdds).share,
  })
}
