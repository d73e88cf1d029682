import type { Outcome } from '../outcome.ts'
import { refusedConfidence } from './admissible.ts'
import { countLives, type LifeCount, type Lifetime, refusedLifetimes } from './lifetime.ts'
import { normalQuantile } from './normal.ts'

/** How limits are laid about the estimate: on its own scale, on that of its logarithm, or of the logarithm of that. */
export type LimitScale = 'plain' | 'log' | 'log-log'

export interface SurvivalStep extends LifeCount {
  /** Share that lasts longer than this time. */
  readonly survival: number
  /** Greenwood's; null once the estimate is 0, where nothing is left to tell the spread from. */
  readonly standardError: number | null
  readonly lower: number | null
  readonly upper: number | null
}

export interface SurvivalCurve {
  /** One for each time at which a life ended or was last seen. */
  readonly steps: readonly SurvivalStep[]
  /** Time by which half have ended; null while the curve is above one half. */
  readonly median: number | null
  readonly medianLower: number | null
  readonly medianUpper: number | null
}

/** Products of fractions miss one half by this little where they should meet it. */
const DUST = 1e-9

/**
 * Share of lives that last longer than a time, from lives of which some were still going (Kaplan and Meier).
 *
 *     S(t) = Π (1 - ended / at risk)                            over the times up to t
 *     standard error = S √ Σ ended / (at risk (at risk - ended))   Greenwood
 *
 * Holds where a life stops being watched for reasons that have nothing to do with its length. The median is the first time the
 * curve is below one half, or the middle of the stretch where it equals it; its limits are where the limits of the curve pass.
 *
 * @source SRC-313 Kaplan-Meier estimate and Greenwood's error (docs/sources.md)
 * @returns the steps of the curve and the median, or a named problem
 * @example kaplanMeier({ lives: [{ time: 5, ended: true }, { time: 9, ended: false }], confidence: 0.95, scale: 'log' }).median // → 7
 */
export function kaplanMeier(input: {
  readonly lives: readonly Lifetime[]
  readonly confidence: number
  readonly scale: LimitScale
}): Outcome<SurvivalCurve> {
  const { lives, confidence, scale } = input
  const refused = refusedLifetimes('lives', lives) ?? refusedConfidence(confidence)
  if (refused) return refused
  const z = -normalQuantile((1 - confidence) / 2)
  let survival = 1
  let greenwood = 0
  // Written out: spreading an object into each step takes ten times as long as the sums.
  const steps = countLives(lives).map(({ time, atRisk, ended, lastSeen }): SurvivalStep => {
    survival *= (atRisk - ended) / atRisk
    greenwood += ended / atRisk / (atRisk - ended)
    if (survival === 0) return { time, atRisk, ended, lastSeen, survival, standardError: null, lower: null, upper: null }
    const relativeError = Math.sqrt(greenwood)
    const standardError = survival * relativeError
    const { lower, upper } = limits(survival, z * relativeError, scale)
    return { time, atRisk, ended, lastSeen, survival, standardError, lower, upper }
  })
  return {
    ok: true,
    steps,
    median: timeAtHalf(steps, (step) => step.survival),
    medianLower: timeAtHalf(steps, (step) => step.lower),
    medianUpper: timeAtHalf(steps, (step) => step.upper),
  }
}

/**
 * The estimate at any time: that of the last step at or before it, 1 before the first.
 *
 * @example survivalAt([], 100) // → 1
 */
export function survivalAt(steps: readonly SurvivalStep[], time: number): number {
  return steps.findLast((step) => step.time <= time)?.survival ?? 1
}

/**
 * How many lives are still watched at a time, those that end or are last seen at it included: the line of figures under a curve.
 *
 * @example atRiskAt([{ time: 5, ended: true }, { time: 9, ended: false }], 6) // → 1
 */
export function atRiskAt(lives: readonly Lifetime[], time: number): number {
  return lives.filter((life) => life.time >= time).length
}

/** `reach` is z times the error relative to the estimate. */
function limits(survival: number, reach: number, scale: LimitScale): { lower: number; upper: number } {
  switch (scale) {
    case 'plain':
      return { lower: Math.max(0, survival * (1 - reach)), upper: Math.min(1, survival * (1 + reach)) }
    case 'log':
      return { lower: survival * Math.exp(-reach), upper: Math.min(1, survival * Math.exp(reach)) }
    case 'log-log': {
      if (survival === 1) return { lower: 1, upper: 1 }
      const hazard = -Math.log(survival)
      return { lower: Math.exp(-hazard * Math.exp(reach / hazard)), upper: Math.exp(-hazard * Math.exp(-reach / hazard)) }
    }
  }
}

/** First time a falling curve is below one half; the middle of the level stretch where it equals one half. */
function timeAtHalf(steps: readonly SurvivalStep[], heightOf: (step: SurvivalStep) => number | null): number | null {
  const reached = steps.findIndex((step) => (heightOf(step) ?? 1) <= 0.5 + DUST)
  const step = steps[reached]
  if (!step) return null
  if (heightOf(step)! < 0.5 - DUST) return step.time
  const end = steps.slice(reached + 1).find((later) => (heightOf(later) ?? 0) < 0.5 - DUST) ?? steps.at(-1)!
  return (step.time + end.time) / 2
}
