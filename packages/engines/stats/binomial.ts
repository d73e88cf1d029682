import { type Outcome, refuse } from '../outcome.ts'
import { refusedConfidence, refusedCount } from './admissible.ts'
import { betaQuantile } from './beta.ts'
import { normalQuantile } from './normal.ts'

export interface Sample {
  /** How many of them were what was looked for, as valves that leaked. */
  readonly found: number
  /** How many were looked at. */
  readonly lookedAt: number
  /** Share of such intervals that shall cover the true share: 0.95. */
  readonly confidence: number
}

export interface ShareLimits {
  readonly share: number
  readonly lower: number
  readonly upper: number
}

/**
 * Exact limits of a share (Clopper and Pearson): they cover the true share at least as often as they promise.
 *
 *     lower = quantile((1-c)/2) of beta(found, missed + 1)        0 when none was found
 *     upper = quantile((1+c)/2) of beta(found + 1, missed)        1 when all were
 *
 * Holds for independent draws from many; for a large part of a small stock the limits are wider than need be.
 *
 * @source SRC-310 exact limits of a share (docs/sources.md)
 * @returns from 0 to 1, or a named problem
 * @example exactShareLimits({ found: 1, lookedAt: 1, confidence: 0.95 }) // → { ok: true, share: 1, lower: 0.025, upper: 1 }
 */
export function exactShareLimits(sample: Sample): Outcome<ShareLimits> {
  const refused = refusedSample(sample)
  if (refused) return refused
  const { found, lookedAt, confidence } = sample
  const missed = lookedAt - found
  const outside = (1 - confidence) / 2
  const lower = found === 0 ? 0 : betaQuantile({ shapeBelow: found, shapeAbove: missed + 1, p: outside })
  // The upper limit is where the missed ones have their lower: small shares keep their digits.
  const upper = missed === 0 ? 1 : 1 - betaQuantile({ shapeBelow: missed, shapeAbove: found + 1, p: outside })
  return { ok: true, share: found / lookedAt, lower, upper }
}

/**
 * Limits of a share by Wilson's score: nearer to the promised confidence on average than the exact ones, now and then below it.
 *
 *     (found + z²/2 ± z √(found·missed/n + z²/4)) / (n + z²)
 *
 * @source SRC-311 score limits of a share (docs/sources.md)
 * @returns from 0 to 1, or a named problem
 * @example wilsonShareLimits({ found: 0, lookedAt: 8, confidence: 0.5 }).lower // → 0
 */
export function wilsonShareLimits(sample: Sample): Outcome<ShareLimits> {
  const refused = refusedSample(sample)
  if (refused) return refused
  const { found, lookedAt, confidence } = sample
  const missed = lookedAt - found
  const z = -normalQuantile((1 - confidence) / 2)
  const middle = found + (z * z) / 2
  const width = z * Math.sqrt(found * (missed / lookedAt) + (z * z) / 4)
  return {
    ok: true,
    share: found / lookedAt,
    lower: found === 0 ? 0 : (middle - width) / (lookedAt + z * z),
    upper: missed === 0 ? 1 : (middle + width) / (lookedAt + z * z),
  }
}

function refusedSample({ found, lookedAt, confidence }: Sample) {
  const refused = refusedCount({ found, lookedAt }) ?? refusedConfidence(confidence)
  if (refused) return refused
  if (lookedAt === 0) return refuse('share/none-looked-at', 'lookedAt', 'no share of nothing: none were looked at')
  if (found > lookedAt)
    return refuse('share/more-found-than-looked-at', 'found', `${found} found, but only ${lookedAt} looked at`)
  return null
}
