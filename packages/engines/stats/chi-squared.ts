import { gammaAbove, gammaBelow, gammaQuantile, gammaUpperQuantile } from './gamma.ts'

/**
 * Chance that a chi-squared number is at most x.
 *
 * @source SRC-308 chi-squared (docs/sources.md)
 * @param degreesOfFreedom above 0, need not be whole
 * @returns from 0 to 1; NaN for x below 0 and outside the domain
 * @example chiSquaredBelow(2, 2) // → 1 - Math.exp(-1)
 */
export function chiSquaredBelow(x: number, degreesOfFreedom: number): number {
  return gammaBelow(degreesOfFreedom / 2, x / 2)
}

/**
 * Chance that a chi-squared number is above x: the p value of a test.
 *
 * @source SRC-308 chi-squared (docs/sources.md)
 * @param degreesOfFreedom above 0, need not be whole
 * @returns from 0 to 1, small values with all their digits; NaN for x below 0 and outside the domain
 * @example chiSquaredAbove(2, 2) // → Math.exp(-1)
 */
export function chiSquaredAbove(x: number, degreesOfFreedom: number): number {
  return gammaAbove(degreesOfFreedom / 2, x / 2)
}

/**
 * The x below which a chi-squared number falls with chance p.
 *
 * @source SRC-308 chi-squared (docs/sources.md)
 * @returns 0 for p = 0, Infinity for p = 1; NaN outside the domain
 * @example chiSquaredQuantile(1 - Math.exp(-1), 2) // → 2
 */
export function chiSquaredQuantile(p: number, degreesOfFreedom: number): number {
  return 2 * gammaQuantile(degreesOfFreedom / 2, p)
}

/**
 * The x above which a chi-squared number falls with chance q; use it for small q.
 *
 * @source SRC-308 chi-squared (docs/sources.md)
 * @returns Infinity for q = 0, 0 for q = 1; NaN outside the domain
 * @example chiSquaredUpperQuantile(Math.exp(-300), 2) // → 600
 */
export function chiSquaredUpperQuantile(q: number, degreesOfFreedom: number): number {
  return 2 * gammaUpperQuantile(degreesOfFreedom / 2, q)
}
