/** What is known of a wear rate after the readings: thirteen rates, each with its share of belief. */
export interface RatePosterior {
  /** mm a day, rising. */
  readonly rates: readonly number[]
  /** Sum 1. */
  readonly weights: readonly number[]
  /** Of ln rate. */
  readonly logMean: number
  readonly logVariance: number
  /** ln of the mean likelihood over the prior: what the readings say for the prior, but for the filter's own constant. */
  readonly logEvidence: number
}

/** Evenly spaced nodes: for a smooth single hump the plain sum over them is as good as an integral. */
const NODES = 13
const REACH = 3.8
/** A Newton step longer than this (a factor of two in the rate) is cut: far out the curve is no parabola. */
const LONGEST_STEP = 0.7
const MOST_STEPS = 40
/** Readings that say less leave the prior where it is; more than the most is as good as certain. */
const LEAST_SAID = 1e-6
const MOST_SAID = 1e12

/**
 * Belief about ln rate after a likelihood that is a parabola in the rate.
 *
 *     ln belief = pull × rate - information × rate² / 2 - (ln rate - mean)² / (2 variance)
 *
 * Its summit is found by Newton's way; the nodes stand evenly within 3.8 standard deviations of it.
 *
 * @source SRC-700 the wear model · SRC-704 the sum over nodes (docs/sources.md)
 * @returns rates in mm a day with weights that sum to 1
 */
export function posteriorOfRate(
  likelihood: { readonly pull: number; readonly information: number },
  prior: { readonly mean: number; readonly variance: number },
): RatePosterior {
  const { pull, information } = likelihood
  const summit = summitOf(likelihood, prior)
  const precision = 1 / prior.variance
  const top = Math.exp(summit)
  const curvature = precision + 2 * information * top * top - pull * top
  const spacing = (2 * REACH) / (NODES - 1) / Math.sqrt(Math.max(precision / 2, curvature))
  const rates: number[] = []
  const heights: number[] = []
  let highest = -Infinity
  for (let node = 0; node < NODES; node++) {
    const logRate = summit + (node - (NODES - 1) / 2) * spacing
    const rate = Math.exp(logRate)
    const height = pull * rate - (information * rate * rate) / 2 - ((logRate - prior.mean) ** 2 * precision) / 2
    rates.push(rate)
    heights.push(height)
    if (height > highest) highest = height
  }
  const weights: number[] = []
  let sum = 0
  let first = 0
  let second = 0
  for (let node = 0; node < NODES; node++) {
    const weight = Math.exp(heights[node]! - highest)
    const fromSummit = (node - (NODES - 1) / 2) * spacing
    weights.push(weight)
    sum += weight
    first += weight * fromSummit
    second += weight * fromSummit * fromSummit
  }
  for (let node = 0; node < NODES; node++) weights[node]! /= sum
  return {
    rates,
    weights,
    logMean: summit + first / sum,
    logVariance: Math.max(0, second / sum - (first / sum) ** 2),
    logEvidence: highest + Math.log(sum * spacing) - Math.log(2 * Math.PI * prior.variance) / 2,
  }
}

/** Of the rate itself: mm a day, and its square. */
export interface RateMoments {
  readonly mean: number
  readonly variance: number
}

export function rateMoments({ rates, weights }: RatePosterior): RateMoments {
  let mean = 0
  for (let node = 0; node < rates.length; node++) mean += weights[node]! * rates[node]!
  let variance = 0
  for (let node = 0; node < rates.length; node++) variance += weights[node]! * (rates[node]! - mean) ** 2
  return { mean, variance }
}

/** The ln rate with the highest belief. The search starts from the prior, or from the readings where they say more. */
function summitOf(
  { pull, information }: { readonly pull: number; readonly information: number },
  { mean, variance }: { readonly mean: number; readonly variance: number },
): number {
  const precision = 1 / variance
  const said = pull > 0 && information > 0 ? Math.min((pull * pull) / information, MOST_SAID) : 0
  const fromReadings = said > LEAST_SAID ? Math.log(pull / information) : mean
  let logRate = (precision * mean + said * fromReadings) / (precision + said)
  for (let step = 0; step < MOST_STEPS; step++) {
    const rate = Math.exp(logRate)
    const slope = pull * rate - information * rate * rate - (logRate - mean) * precision
    const bend = precision + 2 * information * rate * rate - pull * rate
    // Where the curve is hollow, Newton would walk away from the summit.
    const safeBend = bend > precision ? bend : precision + information * rate * rate
    const move = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, slope / safeBend))
    logRate += move
    if (move * move * safeBend < 1e-6) break
  }
  return logRate
}
