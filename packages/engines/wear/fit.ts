import { type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { logRateSeen } from './earlier-lives.ts'
import { type FitLife, layEndToEnd, type LivesEndToEnd } from './fit-lives.ts'
import { areSettled, evidenceOf, type GroupRates, nextRates, ratesBeforeFit } from './fit-rates.ts'
import { livesForWear, logLikelihoodOf, MOST_EVALUATIONS, searchWear } from './fit-wear.ts'
import { nextReadingsWithin } from './fit-quality.ts'
import { defaultPrior, type GroupPrior, type WearParameters } from './prior.ts'

export interface FitInput {
  readonly lives: readonly FitLife[]
  /** Called with the share of the work that is done, from 0 to 1. */
  readonly onProgress?: (share: Ratio) => void
  /** Asked often; once it says yes the fit ends with `fit/stopped`. */
  readonly shouldStop?: () => boolean
}

export interface FitQuality {
  readonly lives: number
  readonly readings: number
  readonly readingsLeftOut: number
  /** Lives with two readings or more: only they tell a rate. */
  readonly livesTellingRate: number
  /** Lives with three readings or more that the wear parameters were fitted to. */
  readonly livesTellingWear: number
  readonly evaluations: number
  readonly hasConverged: boolean
  readonly logLikelihood: number
  /** Share of last readings, of the lives that told wear, inside the 80 % band made from the readings before: 0.8 is right. */
  readonly lastReadingsWithin80: Ratio | null
}

export interface PriorFit {
  /** By the name of the group. A record of its own, so that it may be stored as JSON. */
  readonly groups: Readonly<Record<string, GroupPrior>>
  /** For a group that was not in the fit. */
  readonly plant: GroupPrior
  readonly quality: FitQuality
}

const ALTERNATIONS = 3
const ROUNDS = 12
const LARGEST_VALVE_SHARE = 0.6
/** The share that stays with a valve leans on the setting as if on so many pairs of lives. */
const PAIRS_BORROWED = 20

/**
 * Learns from all packing lives of a plant how fast glands wear, group by group, and how readings scatter.
 *
 * Three times in turn: the rates of all groups by expectation and maximisation, then reading error, wear's chance and
 * bed-in by the marginal likelihood. The same lives in the same order give the same priors to the last bit.
 *
 * Holds where lives of one group are alike. It does not know of seasons, nor of changes of duty within a life.
 *
 * @source SRC-709 fit of the priors (docs/sources.md)
 * @returns priors with the data they rest on; no life with a reading is `fit/no-lives`, a stop `fit/stopped`
 * @example fitPriors({ lives: [] }).ok // → false
 */
export function fitPriors({ lives: records, onProgress, shouldStop = () => false }: FitInput): Outcome<PriorFit> {
  const laid = layEndToEnd(records, defaultPrior.wear)
  if (!laid.ok) return laid
  const { lives } = laid
  if (lives.groupOf.length === 0) return refuse('fit/no-lives', 'lives', 'no life with a reading to learn from')
  const progress = stepsOf(onProgress)
  const chosen = livesForWear(lives)
  let wear: WearParameters = defaultPrior.wear
  let rates = ratesBeforeFit(lives.groups.length)
  let evaluations = 0
  let hasConverged = true
  for (let alternation = 0; alternation <= ALTERNATIONS; alternation++) {
    rates = settledRates(lives, { wear, rates, shouldStop, onStep: progress.rates })
    // The last time round the rates are settled with the final wear parameters, and nothing more.
    if (alternation < ALTERNATIONS) {
      const search = searchWear(lives, chosen, { wear, rates, shouldStop, onStep: progress.wear })
      ;({ wear, hasConverged } = search)
      evaluations += search.evaluations
    }
    if (shouldStop()) return refuse('fit/stopped', 'shouldStop', 'the fit was stopped before its end')
  }
  const valveShare = valveShareOf(lives, wear, rates)
  const plant: GroupPrior = { rate: rates.plant, wear, valveShare, origin: 'fitted to the plant', lives: sum(rates.lives) }
  const groups = Object.fromEntries(
    lives.groups.map((name, index): [string, GroupPrior] => {
      const told = rates.lives[index]!
      return [
        name,
        { ...plant, rate: rates.groups[index]!, lives: told, origin: told > 0 ? 'fitted to the group' : plant.origin },
      ]
    }),
  )
  progress.end()
  const quality = {
    lives: lives.groupOf.length,
    readings: lives.ages.length,
    readingsLeftOut: lives.readingsLeftOut,
    livesTellingRate: sum(rates.lives),
    livesTellingWear: chosen.length,
    evaluations,
    hasConverged,
    logLikelihood: logLikelihoodOf(lives, chosen, { wear, rates }),
    lastReadingsWithin80: nextReadingsWithin(lives, chosen, { wear, rates }),
  }
  return { ok: true, groups, plant, quality }
}

/**
 * The prior of a group by its name; the plant's for a group that was not in the fit.
 *
 * @example priorOfGroup({ groups: {}, plant: defaultPrior }, 'steam').lives // → 0
 */
export function priorOfGroup(fit: Pick<PriorFit, 'groups' | 'plant'>, group: string): GroupPrior {
  return Object.hasOwn(fit.groups, group) ? fit.groups[group]! : fit.plant
}

function settledRates(
  lives: LivesEndToEnd,
  given: {
    readonly wear: WearParameters
    readonly rates: GroupRates
    readonly shouldStop: () => boolean
    readonly onStep: () => void
  },
): GroupRates {
  const evidence = evidenceOf(lives, given.wear)
  let { rates } = given
  for (let round = 0; round < ROUNDS && !given.shouldStop(); round++) {
    const next = nextRates(lives, evidence, rates)
    rates = next.rates
    given.onStep()
    if (areSettled(next.moved)) break
  }
  return rates
}

/** Mean product of what two lives of one valve, one after the other, lie above their group: its share of the variance. */
function valveShareOf(lives: LivesEndToEnd, wear: WearParameters, rates: GroupRates): number {
  const { pull, information } = evidenceOf(lives, wear)
  const lastOf = new Map<string, number>()
  let products = PAIRS_BORROWED * defaultPrior.valveShare
  let pairs = PAIRS_BORROWED
  for (const [index, valve] of lives.valves.entries()) {
    const seen = logRateSeen({ pull: pull[index]!, information: information[index]! })
    if (!seen) continue
    const { logRate, logRateVariance } = rates.groups[lives.groupOf[index]!]!
    const above = (seen.logRate - logRate) / Math.sqrt(logRateVariance)
    const before = lastOf.get(valve)
    if (before !== undefined) {
      products += above * before
      pairs += 1
    }
    lastOf.set(valve, above)
  }
  return Math.max(0, Math.min(LARGEST_VALVE_SHARE, products / pairs))
}

/** Counts the steps of both parts of the work against the most there may be. */
function stepsOf(onProgress: FitInput['onProgress']) {
  // One round through all lives costs about as much as fifty searches through the chosen ones in a large plant.
  const ROUND_WEIGHT = 20
  const all = ALTERNATIONS * MOST_EVALUATIONS + (ALTERNATIONS + 1) * ROUNDS * ROUND_WEIGHT
  let done = 0
  const add = (weight: number) => {
    done = Math.min(all, done + weight)
    onProgress?.(ratio(done / all))
  }
  return { rates: () => add(ROUND_WEIGHT), wear: () => add(1), end: () => add(all) }
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, count) => total + count, 0)
}
