import { betaBelow, betaBelowNearNought, betaQuantileLogOdds } from './beta.ts'
import { normalDistribution, normalQuantile } from './normal.ts'

/** From here on Hill's transformation to the normal distribution is exact to the last digits, far into the tails. */
const NEARLY_NORMAL = 1e5

/**
 * Chance that a Student t number is at most t.
 *
 *     t < 0:  I(x; ν/2, 1/2) / 2  with  x = ν / (ν + t²)
 *
 * @source SRC-307 Student t (docs/sources.md)
 * @param degreesOfFreedom above 0, need not be whole; Infinity is the normal distribution
 * @returns from 0 to 1, small values with all their digits; NaN outside the domain
 * @example studentDistribution(-1, 1) // → 0.25
 */
export function studentDistribution(t: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0) || Number.isNaN(t)) return NaN
  if (degreesOfFreedom >= NEARLY_NORMAL) return normalDistribution(toNormal(t, degreesOfFreedom))
  const tail = tailBeyond(Math.abs(t), degreesOfFreedom)
  return t > 0 ? 1 - tail : tail
}

/**
 * The t below which a Student t number falls with chance p.
 *
 * @source SRC-307 Student t (docs/sources.md)
 * @param degreesOfFreedom above 0, need not be whole; Infinity is the normal distribution
 * @returns -Infinity for p = 0 and Infinity for p = 1, also where t is beyond the largest double; NaN outside the domain
 * @example studentQuantile(0.25, 1) // → -1
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0 && p >= 0 && p <= 1)) return NaN
  if (degreesOfFreedom >= NEARLY_NORMAL) return fromNormal(normalQuantile(p), degreesOfFreedom)
  if (p === 0.5) return 0
  const lower = Math.min(p, 1 - p)
  // Near the middle the odds are found from the small side, t² / (ν + t²), which keeps the digits of a small t.
  const logOdds =
    lower > 0.25
      ? -betaQuantileLogOdds({ shapeBelow: 0.5, shapeAbove: degreesOfFreedom / 2, p: 2 * Math.abs(p - 0.5) })
      : betaQuantileLogOdds({ shapeBelow: degreesOfFreedom / 2, shapeAbove: 0.5, p: 2 * lower })
  const size = Math.sqrt(degreesOfFreedom) * Math.exp(-logOdds / 2)
  return p < 0.5 ? -size : size
}

function tailBeyond(size: number, degreesOfFreedom: number): number {
  if (size === Infinity) return 0
  const shapes = { shapeBelow: degreesOfFreedom / 2, shapeAbove: 0.5 }
  const logOdds = Math.log(degreesOfFreedom) - 2 * Math.log(size)
  if (logOdds < -40) return betaBelowNearNought(shapes, logOdds) / 2
  const inUnits = size / Math.sqrt(degreesOfFreedom)
  const square = inUnits * inUnits
  return betaBelow({ ...shapes, x: 1 / (1 + square), rest: square / (1 + square) }) / 2
}

/** The normal number that t corresponds to (Hill): y = √(a ln(1 + t²/ν)) with a = ν - 1/2, and a small correction. */
function toNormal(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom === Infinity || !Number.isFinite(t)) return t
  const inUnits = t / Math.sqrt(degreesOfFreedom)
  const y = Math.sign(t) * Math.sqrt((degreesOfFreedom - 0.5) * Math.log1p(inUnits * inUnits))
  // So far out both tails are 0 and 1, and the correction would overflow.
  return Math.abs(y) > 100 ? y : y + correction(y, degreesOfFreedom)
}

function fromNormal(z: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom === Infinity || !Number.isFinite(z)) return z
  let y = z
  for (let pass = 0; pass < 3; pass++) y = z - correction(y, degreesOfFreedom)
  return Math.sign(y) * Math.sqrt(degreesOfFreedom * Math.expm1((y * y) / (degreesOfFreedom - 0.5)))
}

/** (y³ + 3y)/b - (4y⁷ + 33y⁵ + 240y³ + 855y)/(10 b²) with b = 48 a². */
function correction(y: number, degreesOfFreedom: number): number {
  const square = y * y
  const b = 48 * (degreesOfFreedom - 0.5) ** 2
  const second = (((4 * square + 33) * square + 240) * square + 855) / 10
  return (y * (square + 3 - second / b)) / b
}
