import { filterLife } from './filter.ts'
import { type LivesEndToEnd, stretchOf } from './fit-lives.ts'
import { posteriorOfRate } from './posterior.ts'
import { defaultPrior, type RatePrior, type WearParameters } from './prior.ts'

/** Wear rates of all groups, and of the plant for groups that nobody has seen. */
export interface GroupRates {
  readonly groups: readonly RatePrior[]
  /** Lives of each group that told a rate. */
  readonly lives: readonly number[]
  /** A group not seen yet: the mean of the group means, with their spread as its doubt. */
  readonly plant: RatePrior
}

/** What each life says of its rate, once the wear parameters are given. */
export interface LifeEvidence {
  readonly pull: Float64Array
  readonly information: Float64Array
}

/** The variance within a group counts as if it were seen in so many lives of the plant at large. */
const LIVES_BORROWED = 10
/** The plant's own mean and variance lean on the settings as if on so few lives: they only matter in a new plant. */
const SETTINGS_WEIGHT = 20
const LEAST_VARIANCE = 0.01
const LEAST_BETWEEN_GROUPS = 0.001
const SETTLED = 1e-4

/** The quadratic of each life; a life with one reading has none. */
export function evidenceOf(lives: LivesEndToEnd, wear: WearParameters): LifeEvidence {
  const count = lives.groupOf.length
  const pull = new Float64Array(count)
  const information = new Float64Array(count)
  for (let index = 0; index < count; index++) {
    const filtered = filterLife(wear, stretchOf(lives, index))
    pull[index] = filtered.pull
    information[index] = filtered.information
  }
  return { pull, information }
}

/** Where the fit begins: every group like the settings. */
export function ratesBeforeFit(groupCount: number): GroupRates {
  const plant = defaultPrior.rate
  const groups = Array.from({ length: groupCount }, () => plant)
  return { groups, lives: groups.map(() => 0), plant }
}

/**
 * One round of expectation and maximisation for the rates of all groups.
 *
 *     expectation    mean and mean square of ln rate of each life, given its group's prior
 *     group mean     shrunk to the plant: k = between / (between + variance / lives)
 *     group variance (10 × plant variance + squares in the group) / (10 + lives)
 *
 * @source SRC-709 fit of the priors (docs/sources.md)
 * @returns the next rates, and by how much any group's mean moved
 */
export function nextRates(lives: LivesEndToEnd, evidence: LifeEvidence, rates: GroupRates): { rates: GroupRates; moved: number } {
  const sums = sumsOf(lives, evidence, rates)
  const { groups } = rates
  const told = groups.flatMap((group, index) => {
    const count = sums.lives[index]!
    return count === 0 ? [] : [{ mean: sums.first[index]! / count, variance: group.logRateVariance / count }]
  })
  const { plantMean, between } = plantOf(told, rates.plant)

  const means = groups.map((group, index) => {
    const count = sums.lives[index]!
    if (count === 0) return { logRate: plantMean, logRateMeanVariance: between }
    const trust = between / (between + group.logRateVariance / count)
    return { logRate: plantMean + trust * (sums.first[index]! / count - plantMean), logRateMeanVariance: between * (1 - trust) }
  })
  const squares = means.map(
    ({ logRate }, index) => sums.second[index]! - 2 * logRate * sums.first[index]! + sums.lives[index]! * logRate ** 2,
  )
  const allLives = sums.lives.reduce((sum, count) => sum + count, 0)
  const allSquares = squares.reduce((sum, square) => sum + square, 0)
  const plantVariance = (SETTINGS_WEIGHT * defaultPrior.rate.logRateVariance + allSquares) / (SETTINGS_WEIGHT + allLives)
  const next = means.map((mean, index) => {
    const variance = (LIVES_BORROWED * plantVariance + squares[index]!) / (LIVES_BORROWED + sums.lives[index]!)
    return { ...mean, logRateVariance: Math.max(LEAST_VARIANCE, variance) }
  })
  const moved = next.reduce((most, group, index) => Math.max(most, Math.abs(group.logRate - groups[index]!.logRate)), 0)
  const plant = { logRate: plantMean, logRateVariance: Math.max(LEAST_VARIANCE, plantVariance), logRateMeanVariance: between }
  return { rates: { groups: next, lives: sums.lives, plant }, moved }
}

export function areSettled(moved: number): boolean {
  return moved < SETTLED
}

interface Sums {
  readonly lives: number[]
  /** Sums of ln rate and of its square. */
  readonly first: number[]
  readonly second: number[]
}

function sumsOf(lives: LivesEndToEnd, { pull, information }: LifeEvidence, { groups }: GroupRates): Sums {
  const sums = { lives: groups.map(() => 0), first: groups.map(() => 0), second: groups.map(() => 0) }
  const priors = groups.map((group) => ({ mean: group.logRate, variance: group.logRateVariance }))
  for (let index = 0; index < lives.groupOf.length; index++) {
    if (!(information[index]! > 0)) continue
    const group = lives.groupOf[index]!
    const { logMean, logVariance } = posteriorOfRate({ pull: pull[index]!, information: information[index]! }, priors[group]!)
    sums.lives[group]! += 1
    sums.first[group]! += logMean
    sums.second[group]! += logVariance + logMean * logMean
  }
  return sums
}

/** Mean of the group means, each by its certainty, and the variance between them. The settings stand in as one group. */
function plantOf(told: readonly { readonly mean: number; readonly variance: number }[], before: RatePrior) {
  const between = before.logRateMeanVariance
  let weight = 1 / (between + 1)
  let plantMean = weight * defaultPrior.rate.logRate
  for (const group of told) {
    weight += 1 / (between + group.variance)
    plantMean += group.mean / (between + group.variance)
  }
  plantMean /= weight
  let spread = defaultPrior.rate.logRateMeanVariance
  for (const group of told) {
    const trust = between / (between + group.variance)
    spread += (trust * (group.mean - plantMean)) ** 2 + between * (1 - trust)
  }
  return { plantMean, between: Math.max(LEAST_BETWEEN_GROUPS, spread / (told.length + 1)) }
}
