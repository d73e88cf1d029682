import { logGamma, logGammaOfOnePlus, logLessRise, stirlingRest } from './log-gamma.ts'
import { normalDistribution } from './normal.ts'
import { rootByNewton } from './root.ts'

/** From this shape on the uniform expansion of Temme needs two terms only, and the series too many. */
const VAST_SHAPE = 1e8
const MOST_TERMS = 1_000_000

/**
 * Share of the gamma distribution of this shape (scale 1) below x: the regularised lower incomplete gamma function P.
 *
 *     P(shape, x) = 1/Γ(shape) ∫₀ˣ t^(shape-1) e^(-t) dt
 *
 * Relative error below 1e-12 wherever the result is not smaller than the smallest normal double.
 *
 * @source SRC-305 incomplete gamma (docs/sources.md)
 * @param shape above 0
 * @param x 0 or more, Infinity allowed
 * @returns from 0 to 1; NaN outside the domain
 * @example gammaBelow(1, 2) // → 1 - Math.exp(-2)
 */
export function gammaBelow(shape: number, x: number): number {
  return tails(shape, x).below
}

/**
 * Share of the gamma distribution of this shape (scale 1) above x: Q = 1 - P, without the loss of digits of that difference.
 *
 * @source SRC-305 incomplete gamma (docs/sources.md)
 * @param shape above 0
 * @param x 0 or more, Infinity allowed
 * @returns from 0 to 1; NaN outside the domain
 * @example gammaAbove(1, 700) * 1e304 // → Math.exp(-700) * 1e304
 */
export function gammaAbove(shape: number, x: number): number {
  return tails(shape, x).above
}

/**
 * The x below which the share p of the gamma distribution lies. Inverse of gammaBelow.
 *
 * @source SRC-305 incomplete gamma (docs/sources.md)
 * @returns 0 for p = 0, also where x is smaller than the smallest double; Infinity for p = 1; NaN outside the domain
 * @example gammaQuantile(1, 1 - Math.exp(-2)) // → 2
 */
export function gammaQuantile(shape: number, p: number): number {
  if (!(shape > 0 && shape < Infinity && p >= 0 && p <= 1)) return NaN
  return p <= 0.5 ? quantileFromBelow(shape, p) : quantileFromAbove(shape, 1 - p)
}

/**
 * The x above which the share q of the gamma distribution lies. Inverse of gammaAbove; use it for small q.
 *
 * @source SRC-305 incomplete gamma (docs/sources.md)
 * @returns Infinity for q = 0; 0 for q = 1; NaN outside the domain
 * @example gammaUpperQuantile(1, Math.exp(-300)) // → 300
 */
export function gammaUpperQuantile(shape: number, q: number): number {
  if (!(shape > 0 && shape < Infinity && q >= 0 && q <= 1)) return NaN
  return q <= 0.5 ? quantileFromAbove(shape, q) : quantileFromBelow(shape, 1 - q)
}

interface Tails {
  readonly below: number
  readonly above: number
}

function tails(shape: number, x: number): Tails {
  if (!(shape > 0 && shape < Infinity && x >= 0)) return { below: NaN, above: NaN }
  if (x === 0) return { below: 0, above: 1 }
  if (x === Infinity) return { below: 1, above: 0 }
  if (shape >= VAST_SHAPE) return tailsOfVastShape(shape, x)
  if (shape < 1 && x < 1.5) return tailsNearNought(shape, x)
  if (x < shape + 1) {
    const below = Math.min(1, Math.exp(logPower(shape, x)) * risingSeries(shape, x))
    return { below, above: 1 - below }
  }
  const above = Math.min(1, shape * Math.exp(logPower(shape, x)) * fallingFraction(shape, x))
  return { below: 1 - above, above }
}

/** ln of x^shape e^(-x) / Γ(shape + 1), in a form that keeps its digits for large shapes. */
function logPower(shape: number, x: number): number {
  if (shape < 12) return shape * Math.log(x) - x - logGamma(shape + 1)
  return shape * logLessRise(x / shape, (x - shape) / shape) - Math.log(2 * Math.PI * shape) / 2 - stirlingRest(shape)
}

/** 1 + x/(shape+1) + x²/((shape+1)(shape+2)) + ... */
function risingSeries(shape: number, x: number): number {
  let sum = 1
  let term = 1
  for (let n = 1; n < MOST_TERMS && term > sum * 1e-17; n++) {
    term *= x / (shape + n)
    sum += term
  }
  return sum
}

/** The continued fraction of the upper tail, by Lentz's method. */
function fallingFraction(shape: number, x: number): number {
  let denominator = x + 1 - shape
  let c = 1e300
  let d = 1 / denominator
  let fraction = d
  for (let n = 1; n < MOST_TERMS; n++) {
    const numerator = -n * (n - shape)
    denominator += 2
    d = 1 / awayFromNought(numerator * d + denominator)
    c = awayFromNought(denominator + numerator / c)
    fraction *= d * c
    if (Math.abs(d * c - 1) < 2e-16) break
  }
  return fraction
}

function awayFromNought(x: number): number {
  return Math.abs(x) < 1e-300 ? 1e-300 : x
}

/**
 * Small shape and small x, where both tails keep their digits (Gautschi):
 * P = e^L (1 + R), Q = -(e^L - 1) - e^L R, with L = shape ln x - ln Γ(shape + 1) and R = shape Σ (-x)^k / (k! (shape + k)).
 */
function tailsNearNought(shape: number, x: number): Tails {
  const logLead = shape * Math.log(x) - logGammaOfOnePlus(shape)
  let rest = 0
  let power = 1
  for (let k = 1; k < 60 && Math.abs(power) > 1e-20; k++) {
    power *= -x / k
    rest += power / (shape + k)
  }
  rest *= shape
  const lead = Math.exp(logLead)
  return { below: Math.min(1, lead * (1 + rest)), above: Math.max(0, -Math.expm1(logLead) - lead * rest) }
}

/** Temme's expansion: a normal tail and a small correction. Everything that is not 0 or 1 lies where eta is below 0.004. */
function tailsOfVastShape(shape: number, x: number): Tails {
  const away = (x - shape) / shape
  const exponent = shape * logLessRise(x / shape, away)
  if (!(exponent > -746)) return away < 0 ? { below: 0, above: 1 } : { below: 1, above: 0 }
  const deviation = Math.sign(away) * Math.sqrt(-2 * exponent)
  const eta = deviation / Math.sqrt(shape)
  const first = -1 / 3 + eta * (1 / 12 + eta * (-2 / 135 + eta * (1 / 864 + eta * (1 / 2835 - (eta * 139) / 777600))))
  const second = (-1 / 540 - eta / 288) / shape
  const correction = (Math.exp(exponent) / Math.sqrt(2 * Math.PI * shape)) * (first + second)
  return {
    below: Math.max(0, normalDistribution(deviation) - correction),
    above: Math.max(0, normalDistribution(-deviation) + correction),
  }
}

function quantileFromBelow(shape: number, p: number): number {
  if (p === 0) return 0
  const logNearNought = (Math.log(p) + logGamma(shape + 1)) / shape
  // So near to nought the first term of the series is all there is.
  if (logNearNought < -40) return Math.exp(logNearNought)
  const logX = rootByNewton({
    from: logNearNought - 1,
    to: farthest(shape),
    start: Math.min(Math.max(logNearNought, Math.log(shape) - 1), Math.log(shape)),
    valueAt: (at) => Math.log(gammaBelow(shape, Math.exp(at))) - Math.log(p),
    slopeAt: (at) => (shape * Math.exp(logPower(shape, Math.exp(at)))) / gammaBelow(shape, Math.exp(at)),
  })
  return Math.exp(logX)
}

function quantileFromAbove(shape: number, q: number): number {
  if (q === 0) return Infinity
  const logX = rootByNewton({
    from: -800 / Math.min(shape, 1),
    to: farthest(shape),
    start: Math.log(shape + 1),
    valueAt: (at) => Math.log(q) - Math.log(gammaAbove(shape, Math.exp(at))),
    slopeAt: (at) => (shape * Math.exp(logPower(shape, Math.exp(at)))) / gammaAbove(shape, Math.exp(at)),
  })
  return Math.exp(logX)
}

/** ln of an x with nothing above it that a double could hold. */
function farthest(shape: number): number {
  return Math.log(shape + 60 * Math.sqrt(shape) + 1500)
}
