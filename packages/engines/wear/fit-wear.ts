import { days, mm, mm2 } from '@glandkeeper/units/quantity'
import { minimise } from '../stats/nelder-mead.ts'
import { filterLife } from './filter.ts'
import { type LivesEndToEnd, stretchOf } from './fit-lives.ts'
import type { GroupRates } from './fit-rates.ts'
import { posteriorOfRate } from './posterior.ts'
import { defaultPrior, type SquareMillimetrePerDay, type WearParameters } from './prior.ts'

/** Lives with fewer readings say nothing that tells wear's chance from reading error. */
const LEAST_READINGS = 3
/** More would not make the parameters better known, only the fit slower. */
const MOST_LIVES = 1200
export const MOST_EVALUATIONS = 220
const TOLERANCE = 1e-5
const FIRST_STRIDES = [0.4, 0.5, 0.4, 0.4, 0.4, 0.4]

/** The parameters as logarithms, in one order throughout; the fit leans to the settings by these standard deviations. */
const LEANING = [1, 0.7, 1, 0.7, 1, 1]

function logsOf(wear: WearParameters): number[] {
  const { readingVariance, processVariance, bedInDays, bedInTime, bedInFall, bedInFallVariance } = wear
  return [readingVariance, processVariance, bedInDays, bedInTime, bedInFall, bedInFallVariance].map((value) => Math.log(value))
}

/** Null where a parameter has left the numbers that a prior may hold. */
function wearOf(logs: readonly number[]): WearParameters | null {
  const far = logs.some((log, index) => !(Math.abs(log - settings[index]!) < 8))
  const [readingVariance, processVariance, bedInDays, bedInTime, bedInFall, bedInFallVariance] = logs.map((log) => Math.exp(log))
  if (far) return null
  return {
    readingVariance: mm2(readingVariance!),
    processVariance: processVariance! as SquareMillimetrePerDay,
    bedInDays: days(bedInDays!),
    bedInTime: days(bedInTime!),
    bedInFall: mm(bedInFall!),
    bedInFallVariance: mm2(bedInFallVariance!),
  }
}

const settings = logsOf(defaultPrior.wear)

/** The lives that the wear parameters are fitted to: evenly spread over all that have readings enough. */
export function livesForWear(lives: LivesEndToEnd): number[] {
  const enough: number[] = []
  for (let index = 0; index < lives.groupOf.length; index++) {
    if (lives.starts[index + 1]! - lives.starts[index]! >= LEAST_READINGS) enough.push(index)
  }
  const count = Math.min(MOST_LIVES, enough.length)
  return Array.from({ length: count }, (_, nth) => enough[Math.floor((nth * enough.length) / count)]!)
}

/** ln likelihood of some lives with their rates averaged out over the group's prior, but for a constant of theirs. */
export function logLikelihoodOf(
  lives: LivesEndToEnd,
  chosen: readonly number[],
  given: { readonly wear: WearParameters; readonly rates: GroupRates },
): number {
  const priors = given.rates.groups.map((group) => ({
    mean: group.logRate,
    variance: group.logRateVariance + group.logRateMeanVariance,
  }))
  let sum = 0
  for (const index of chosen) {
    const filtered = filterLife(given.wear, stretchOf(lives, index))
    sum += filtered.logConstant + posteriorOfRate(filtered, priors[lives.groupOf[index]!]!).logEvidence
  }
  return sum
}

export interface WearSearch {
  readonly wear: WearParameters
  readonly evaluations: number
  readonly hasConverged: boolean
}

/**
 * The wear parameters that make the readings likeliest, leaning weakly to the settings so that a small plant stays sane.
 *
 *     least of  -ln likelihood + Σ (ln parameter - ln setting)² / (2 leaning²)
 *
 * @source SRC-709 fit of the priors (docs/sources.md)
 */
export function searchWear(
  lives: LivesEndToEnd,
  chosen: readonly number[],
  given: {
    readonly wear: WearParameters
    readonly rates: GroupRates
    readonly shouldStop: () => boolean
    readonly onStep: () => void
  },
): WearSearch {
  let isStopped = false
  const objective = (logs: readonly number[]): number => {
    // A stopped search still asks; no answer costs anything then.
    isStopped ||= given.shouldStop()
    const wear = isStopped ? null : wearOf(logs)
    given.onStep()
    if (!wear) return Infinity
    const leaning = logs.reduce((sum, log, index) => sum + ((log - settings[index]!) / LEANING[index]!) ** 2 / 2, 0)
    return leaning - logLikelihoodOf(lives, chosen, { wear, rates: given.rates })
  }
  const found = minimise(objective, logsOf(given.wear), {
    step: FIRST_STRIDES,
    tolerance: TOLERANCE,
    mostEvaluations: MOST_EVALUATIONS,
  })
  return { wear: wearOf(found.point) ?? given.wear, evaluations: found.evaluations, hasConverged: found.hasConverged }
}
