import { firstNotPositive, type Outcome } from '../outcome.ts'
import { refusedConfidence, refusedCount, refusedFigures } from './admissible.ts'
import { gammaQuantile, gammaUpperQuantile } from './gamma.ts'

export interface RateLimits {
  /** Events per unit of exposure. */
  readonly rate: number
  readonly lower: number
  readonly upper: number
}

/**
 * Exact two-sided limits of the rate behind a count of independent events (Garwood).
 *
 *     lower = quantile((1-c)/2) of gamma(events) / exposure        0 when there was no event
 *     upper = quantile((1+c)/2) of gamma(events + 1) / exposure
 *
 * Holds for a steady rate. The limits cover the true rate at least as often as they promise, mostly more often.
 *
 * @source SRC-309 exact limits of a Poisson mean (docs/sources.md)
 * @param input.exposure time or number watched, in any unit; 1 gives limits of the count itself
 * @returns the rate and its limits, or a named problem
 * @example poissonLimits({ events: 0, exposure: 1, confidence: 0.9 }) // → { ok: true, rate: 0, lower: 0, upper: Math.log(20) }
 */
export function poissonLimits(input: {
  readonly events: number
  readonly exposure: number
  readonly confidence: number
}): Outcome<RateLimits> {
  const { events, exposure, confidence } = input
  const refused = refusedCount({ events }) ?? firstNotPositive({ exposure }) ?? refusedConfidence(confidence)
  if (refused) return refused
  const outside = (1 - confidence) / 2
  const rate = events / exposure
  const lower = events === 0 ? 0 : gammaQuantile(events, outside) / exposure
  const upper = gammaUpperQuantile(events + 1, outside) / exposure
  return refusedFigures('exposure', [rate, lower, upper]) ?? { ok: true, rate, lower, upper }
}
