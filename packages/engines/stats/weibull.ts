import { type Outcome, refuse } from '../outcome.ts'
import { refusedConfidence, refusedFigures } from './admissible.ts'
import { type KnownLifetime, refusedKnownLifetimes } from './lifetime.ts'
import { type Likelihood, lifetimeLikelihood } from './lifetime-likelihood.ts'
import { logGamma } from './log-gamma.ts'
import { minimise } from './nelder-mead.ts'
import { normalQuantile } from './normal.ts'

/** Variances and covariance of ln scale and ln(1 / shape), from the observed information. */
export interface WeibullCovariance {
  readonly logScale: number
  readonly logSpread: number
  readonly both: number
}

export interface WeibullFit {
  /** Age by which 63.2 % have ended, in the unit of the times. */
  readonly scale: number
  /** Below 1 fewer end the older they are, 1 is chance alone, above 1 they wear out. */
  readonly shape: number
  readonly scaleLower: number
  readonly scaleUpper: number
  readonly shapeLower: number
  readonly shapeUpper: number
  readonly mean: number
  readonly standardDeviation: number
  readonly logLikelihood: number
  /** 2 · 2 - 2 log-likelihood: the smaller of two models on the same lives fits better. */
  readonly aic: number
  readonly covariance: WeibullCovariance
}

interface Place {
  readonly location: number
  readonly logSpread: number
}

const MOST_NEWTON_STEPS = 60

/**
 * The Weibull distribution under which lives as seen are most likely; some still going, some known between two looks only.
 *
 *     share still going at t = exp(-(t / scale)^shape)
 *
 * Limits: normal on the logarithm, ± z √variance, from the observed information. They are too narrow for fewer than ten ends or
 * so, and the shape is then too high. One population, each life seen without choice; two ways of failing need two fits.
 *
 * @source SRC-315 likelihood of censored Weibull lifetimes (docs/sources.md)
 * @returns the fit, or a named problem: no life ended, or the likelihood grows for ever (all ended at one time)
 * @example fitWeibull({ lives: [{ kind: 'going', at: 9 }], confidence: 0.95 }).problem.code // → 'lifetimes/none-ended'
 */
export function fitWeibull(input: {
  readonly lives: readonly KnownLifetime[]
  readonly confidence: number
}): Outcome<WeibullFit> {
  const { lives, confidence } = input
  const refused = refusedConfidence(confidence) ?? refusedKnownLifetimes(lives)
  if (refused) return refused
  const best = mostLikely(lives)
  const covariance = best && covarianceAt(lifetimeLikelihood(lives, best))
  if (!covariance)
    return refuse('weibull/no-maximum', 'lives', 'no shape fits best: the lives hold too few ends, or all at one time')

  const scale = Math.exp(best.location)
  const shape = Math.exp(-best.logSpread)
  const z = -normalQuantile((1 - confidence) / 2)
  const scaleReach = Math.exp(z * Math.sqrt(covariance.logScale))
  const shapeReach = Math.exp(z * Math.sqrt(covariance.logSpread))
  const logLikelihood = lifetimeLikelihood(lives, best).value
  const fit = {
    scale,
    shape,
    scaleLower: scale / scaleReach,
    scaleUpper: scale * scaleReach,
    shapeLower: shape / shapeReach,
    shapeUpper: shape * shapeReach,
    ...moments(scale, shape),
    logLikelihood,
    aic: 4 - 2 * logLikelihood,
  }
  return refusedFigures('lives', Object.values(fit)) ?? { ok: true, ...fit, covariance }
}

/**
 * Age by which a share of lives has ended, with limits: 0.1 gives the age at which one in ten has.
 *
 *     age = scale (-ln(1 - share))^(1 / shape)
 *
 * @source SRC-315 likelihood of censored Weibull lifetimes (docs/sources.md)
 * @param input.fit of fitWeibull
 * @returns the age and its limits, in the unit of the times, or a named problem
 * @example weibullQuantile({ fit: { scale: 9, shape: 2, covariance: { logScale: 0, logSpread: 0, both: 0 } }, share: 1 - Math.exp(-1), confidence: 0.95 }).age // → 9
 */
export function weibullQuantile(input: {
  readonly fit: Pick<WeibullFit, 'scale' | 'shape' | 'covariance'>
  readonly share: number
  readonly confidence: number
}): Outcome<{ age: number; lower: number; upper: number }> {
  const { fit, share, confidence } = input
  const refused = refusedConfidence(confidence)
  if (refused) return refused
  if (!(share > 0 && share < 1)) return refuse('weibull/not-a-share', 'share', `the share must lie between 0 and 1, not ${share}`)
  // ln age = location + spread · w, so its slope by ln spread is spread · w.
  const step = Math.log(-Math.log1p(-share)) / fit.shape
  const { logScale, logSpread, both } = fit.covariance
  const variance = Math.max(0, logScale + 2 * step * both + step * step * logSpread)
  const reach = Math.exp(-normalQuantile((1 - confidence) / 2) * Math.sqrt(variance))
  const age = fit.scale * Math.exp(step)
  const quantile = { age, lower: age / reach, upper: age * reach }
  return refusedFigures('fit', Object.values(quantile)) ?? { ok: true, ...quantile }
}

/** Found roughly by a simplex, which cannot run away, then to the last digits by Newton; null when there is no maximum. */
function mostLikely(lives: readonly KnownLifetime[]): Place | null {
  const logs = lives.map((life) => Math.log(life.kind === 'between' ? life.before : life.at))
  const middle = logs.reduce((sum, log) => sum + log, 0) / logs.length
  const rough = minimise(
    ([location = 0, logSpread = 0]) => -lifetimeLikelihood(lives, { location, logSpread }).value,
    [middle, 0],
    { step: 0.5, tolerance: 1e-4, mostEvaluations: 2000 },
  )
  const [location = NaN, logSpread = NaN] = rough.point
  return polish(lives, { location, logSpread })
}

function polish(lives: readonly KnownLifetime[], start: Place): Place | null {
  let place = start
  let here = lifetimeLikelihood(lives, place)
  let lastMove = Infinity
  for (let step = 0; step < MOST_NEWTON_STEPS; step++) {
    const covariance = covarianceAt(here)
    if (!covariance) return null
    const byLocation = covariance.logScale * here.byLocation + covariance.both * here.byLogSpread
    const byLogSpread = covariance.both * here.byLocation + covariance.logSpread * here.byLogSpread
    place = { location: place.location + byLocation, logSpread: place.logSpread + byLogSpread }
    here = lifetimeLikelihood(lives, place)
    const move = Math.abs(byLocation) + Math.abs(byLogSpread)
    // Narrow intervals are differences of near numbers: their dust keeps the last moves from shrinking further.
    if (move < 1e-13 || (move < 1e-6 && move >= lastMove / 2)) return place
    lastMove = move
  }
  return null
}

/** Inverse of the observed information; null where the likelihood is not a hill. */
function covarianceAt({ byLocationTwice, byLogSpreadTwice, byBoth }: Likelihood): WeibullCovariance | null {
  const determinant = byLocationTwice * byLogSpreadTwice - byBoth * byBoth
  if (!(byLocationTwice < 0 && determinant > 0 && determinant < Infinity)) return null
  return {
    logScale: -byLogSpreadTwice / determinant,
    logSpread: -byLocationTwice / determinant,
    both: byBoth / determinant,
  }
}

function moments(scale: number, shape: number): { mean: number; standardDeviation: number } {
  const mean = scale * Math.exp(logGamma(1 + 1 / shape))
  // Var/mean² = Γ(1 + 2/shape) / Γ(1 + 1/shape)² - 1, as a difference of logarithms: they are near each other for steep shapes.
  const squaredRatio = Math.expm1(logGamma(1 + 2 / shape) - 2 * logGamma(1 + 1 / shape))
  return { mean, standardDeviation: mean * Math.sqrt(Math.max(0, squaredRatio)) }
}
