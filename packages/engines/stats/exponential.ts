import { type Outcome, refuse } from '../outcome.ts'
import { refusedConfidence, refusedFigures } from './admissible.ts'
import { type KnownLifetime, refusedKnownLifetimes } from './lifetime.ts'
import { lifetimeLikelihood } from './lifetime-likelihood.ts'
import { normalQuantile } from './normal.ts'

export interface ExponentialFit {
  /** Mean length of life, in the unit of the times; its reciprocal is the rate. */
  readonly mean: number
  readonly lower: number
  readonly upper: number
  readonly logLikelihood: number
  /** 2 - 2 log-likelihood. */
  readonly aic: number
  /** Variance of ln mean; 1 / number of ends where these are known exactly. */
  readonly logMeanVariance: number
}

const MOST_STEPS = 200

/**
 * The exponential distribution under which lives as seen are most likely: they end by chance, at any age alike.
 *
 *     share still going at t = exp(-t / mean)        mean = time watched / ends, where the ends are known exactly
 *
 * Limits: normal on the logarithm, from the observed information. For exact ends from a steady rate those of poissonLimits are
 * exact. Whether age matters tells fitWeibull, by the smaller of the two aic.
 *
 * @source SRC-315 likelihood of censored Weibull lifetimes, shape 1 (docs/sources.md)
 * @returns the fit, or a named problem
 * @example fitExponential({ lives: [{ kind: 'ended', at: 5 }, { kind: 'going', at: 9 }], confidence: 0.95 }).mean // → 14
 */
export function fitExponential(input: {
  readonly lives: readonly KnownLifetime[]
  readonly confidence: number
}): Outcome<ExponentialFit> {
  const { lives, confidence } = input
  const refused = refusedConfidence(confidence) ?? refusedKnownLifetimes(lives)
  if (refused) return refused
  const location = mostLikelyLocation(lives)
  if (location === null)
    return refuse(
      'exponential/no-maximum',
      'lives',
      'every life had ended at its first look: the mean may be as short as one likes',
    )
  const here = lifetimeLikelihood(lives, { location, logSpread: 0 })
  const logMeanVariance = -1 / here.byLocationTwice
  const reach = Math.exp(-normalQuantile((1 - confidence) / 2) * Math.sqrt(logMeanVariance))
  const mean = Math.exp(location)
  const fit = {
    mean,
    lower: mean / reach,
    upper: mean * reach,
    logLikelihood: here.value,
    aic: 2 - 2 * here.value,
    logMeanVariance,
  }
  return refusedFigures('lives', Object.values(fit)) ?? { ok: true, ...fit }
}

/** ln mean where the slope of the likelihood passes nought, bracketed and then by Newton; null when it never does. */
function mostLikelyLocation(lives: readonly KnownLifetime[]): number | null {
  // Without a look before the end, or a life still going, the likelihood grows as the mean shrinks.
  if (lives.every((life) => life.kind === 'between' && life.after === 0)) return null
  const logs = lives.map((life) => Math.log(life.kind === 'between' ? life.before : life.at))
  const at = (location: number) => lifetimeLikelihood(lives, { location, logSpread: 0 })
  const [shortest, longest] = logs.reduce(
    ([least, most], log) => [Math.min(least, log), Math.max(most, log)],
    [Infinity, -Infinity],
  )
  let low = shortest - Math.log(lives.length) - 50
  let high = longest + Math.log(lives.length) + 50
  let location = longest
  for (let step = 0; step < MOST_STEPS; step++) {
    const { byLocation, byLocationTwice } = at(location)
    if (byLocation > 0) low = location
    else high = location
    const newton = location - byLocation / byLocationTwice
    const next = newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - location) <= 1e-15 * (1 + Math.abs(location))) return next
    location = next
  }
  return location
}
