const SQRT_TWO_PI = 2.5066282746310002
/** Beyond this Hart's form loses its relative digits, and the continued fraction takes over. */
const TAIL_BEGINS = 2.8

/**
 * Height of the standard normal curve.
 *
 *     exp(-x² / 2) / √(2π)
 *
 * @source SRC-302 normal distribution (docs/sources.md)
 * @returns 0 where it is smaller than the smallest double (|x| above 38.6) and at the infinities; NaN for NaN only
 * @example normalDensity(0) // → 0.3989422804014327
 */
export function normalDensity(x: number): number {
  return bell(Math.abs(x)) / SQRT_TWO_PI
}

/**
 * Chance that a standard normal number is at most x: 1 standard deviation gives 0.84.
 *
 * Hart's rational approximation as published by West, and a continued fraction in the tail. The relative error is
 * below 1e-14 down to the smallest double, so the lower tail may be used as it is; for the upper one take
 * `normalDistribution(-x)` and not one less the result.
 *
 * @source SRC-302 normal distribution (docs/sources.md)
 * @returns from 0 to 1, these two for x of -Infinity and Infinity; NaN for NaN only
 * @example normalDistribution(-40) // → 0
 */
export function normalDistribution(x: number): number {
  const distance = Math.abs(x)
  const tail = distance < TAIL_BEGINS ? bell(distance) * hartRatio(distance) : bell(distance) * tailRatio(distance)
  return x > 0 ? 1 - tail : tail
}

/**
 * The x below which a standard normal number falls with chance p. The inverse of normalDistribution.
 *
 * Wichura's algorithm AS 241 (PPND16): relative error about 1e-16, in the lower tail down to p = 1e-300 and below.
 *
 * @source SRC-303 normal quantile (docs/sources.md)
 * @returns -Infinity for p = 0, Infinity for p = 1; NaN for p that is no probability
 * @example normalQuantile(0.975) // → 1.959963984540054
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return NaN
  if (p === 0) return -Infinity
  if (p === 1) return Infinity
  const fromMiddle = p - 0.5
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.180625 - fromMiddle * fromMiddle
    return (fromMiddle * polynomial(middle.above, r)) / polynomial(middle.below, r)
  }
  const depth = Math.sqrt(-Math.log(fromMiddle < 0 ? p : 1 - p))
  const { above, below, shift } = depth <= 5 ? flank : farTail
  const size = polynomial(above, depth - shift) / polynomial(below, depth - shift)
  return fromMiddle < 0 ? -size : size
}

/** exp(-x² / 2), with x split so that the rounding of its square does not grow with it. */
function bell(distance: number): number {
  if (distance > 40) return 0
  const coarse = Math.trunc(distance * 16) / 16
  return Math.exp((-coarse * coarse) / 2) * Math.exp((-(distance - coarse) * (distance + coarse)) / 2)
}

function hartRatio(distance: number): number {
  return polynomial(hart.above, distance) / polynomial(hart.below, distance)
}

/** Tail over bell: 1 / (x + 1/(x + 2/(x + 3/(x + ...)))) / √(2π). The nearer to the middle, the more levels it takes. */
function tailRatio(distance: number): number {
  let fraction = distance
  for (let level = Math.ceil(500 / distance ** 2) + 8; level > 0; level--) fraction = distance + level / fraction
  return 1 / fraction / SQRT_TWO_PI
}

/** Coefficients from the highest power down. */
function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0
  for (const coefficient of coefficients) sum = sum * x + coefficient
  return sum
}

const hart = {
  above: [
    3.52624965998911e-2, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871, 221.213596169931,
    220.206867912376,
  ],
  below: [
    8.83883476483184e-2, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674, 637.333633378831,
    793.826512519948, 440.413735824752,
  ],
}

const middle = {
  above: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946, 1971.5909503065513,
    133.14166789178438, 3.3871328727963665,
  ],
  below: [
    5226.495278852546, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751, 687.1870074920579,
    42.31333070160091, 1,
  ],
}

const flank = {
  shift: 1.6,
  above: [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045, 5.769497221460691,
    4.630337846156546, 1.4234371107496835,
  ],
  below: [
    1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851, 1.6763848301838038,
    2.053191626637759, 1,
  ],
}

const farTail = {
  shift: 5,
  above: [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124, 0.29656057182850487,
    1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  below: [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133, 0.014875361290850615,
    0.1369298809227358, 0.599832206555888, 1,
  ],
}
