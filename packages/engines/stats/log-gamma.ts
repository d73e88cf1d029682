const HALF_LOG_TWO_PI = 0.9189385332046727
const STIRLING_BEGINS = 12
/** One less Euler's constant. */
const LINEAR_TERM = 0.42278433509846713

/** Riemann's zeta of 2, 3, 4, ... less 1; the next would be too small to matter. */
const zetaLessOne = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914, 0.008349277381922827,
  0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853, 0.0004941886041194645, 0.0002460865533080483,
  0.00012271334757848915, 6.124813505870483e-5, 3.058823630702049e-5, 1.528225940865187e-5, 7.637197637899763e-6,
  3.81729326499984e-6, 1.908212716553939e-6, 9.539620338727962e-7, 4.769329867878064e-7, 2.38450502727733e-7,
  1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.490155482836504e-8,
]

/**
 * Natural logarithm of the gamma function; `logGamma(n + 1)` is ln n!.
 *
 * A series about 2, products to get there, Stirling's formula above 12. Relative error below 1e-14, near 1 and 2 as well.
 *
 * @source SRC-305 incomplete gamma (docs/sources.md)
 * @param x above 0
 * @returns NaN for x of 0 and below; Infinity where the logarithm itself is beyond the largest double
 * @example logGamma(5) // → Math.log(24)
 */
export function logGamma(x: number): number {
  if (!(x > 0)) return NaN
  if (x >= STIRLING_BEGINS)
    return x === Infinity ? Infinity : (x - 0.5) * (Math.log(x) - 1) - 0.5 + HALF_LOG_TWO_PI + stirlingRest(x)
  if (x < 0.5) return logGammaOfOnePlus(x) - Math.log(x)
  if (x < 1.5) return logGammaOfOnePlus(x - 1)
  let product = 1
  let rest = x
  while (rest > 2.5) {
    rest -= 1
    product *= rest
  }
  return Math.log(product) + logGammaOfTwoPlus(rest - 2)
}

/**
 * ln Γ(1 + excess), with all digits where the excess is small. For an excess above -1.
 *
 * @example logGammaOfOnePlus(1e-9) * 1e9 // → -0.577215664079
 */
export function logGammaOfOnePlus(excess: number): number {
  return Math.abs(excess) <= 0.5 ? logGammaOfTwoPlus(excess) - Math.log1p(excess) : logGamma(1 + excess)
}

/**
 * What Stirling's formula lacks: ln Γ(x) - ((x - 1/2) ln x - x + ln(2π)/2), for x above 0.
 *
 * @example stirlingRest(1) // → 1 - Math.log(2 * Math.PI) / 2
 */
export function stirlingRest(x: number): number {
  if (x < STIRLING_BEGINS) return logGamma(x) - ((x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI)
  const z = 1 / x / x
  return (1 / 12 - z * (1 / 360 - z * (1 / 1260 - z * (1 / 1680 - z * (1 / 1188 - (z * 691) / 360360))))) / x
}

/**
 * ln(ratio) - rise for a ratio above 0 and rise = ratio - 1, with all digits where the rise is small: there the two cancel.
 * Both are asked for, since either may be known more exactly than the other tells.
 *
 * @example logLessRise(1.000001, 1e-6) * 1e12 // → -0.49999966666691665
 */
export function logLessRise(ratio: number, rise: number): number {
  if (Math.abs(rise) > 0.25) return Math.log(ratio) - rise
  let sum = 0
  let power = -rise
  for (let k = 2; k < 60; k++) {
    power *= -rise
    const next = sum - power / k
    if (next === sum) break
    sum = next
  }
  return sum
}

/** ln Γ(2 + t) for |t| up to 1/2: (1 - γ) t + Σ (ζ(k) - 1) (-t)^k / k. */
function logGammaOfTwoPlus(t: number): number {
  let sum = LINEAR_TERM * t
  let power = -t
  for (const [index, zeta] of zetaLessOne.entries()) {
    power *= -t
    sum += (zeta * power) / (index + 2)
  }
  return sum
}
