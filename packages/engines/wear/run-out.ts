import type { Filtered } from './filter.ts'
import { normalByTable } from './normal-table.ts'
import type { RatePosterior } from './posterior.ts'
import { bedInShare, type WearParameters } from './prior.ts'

/** Everything that the chance of having run out needs, at one moment of one life. */
export interface Outlook {
  readonly wear: WearParameters
  readonly filtered: Filtered
  readonly posterior: RatePosterior
  /** mm²: the follower stands anywhere between two nips. */
  readonly stepVariance: number
}

/** Days within which the reserve is used up, with one chance; Infinity for later than the farthest day asked about. */
export type DaysUntil = (chance: number) => number

/** Farther ahead nobody plans for a packing, and the model was not tried. */
export const FARTHEST_DAYS = 20 * 365.25
/** A quarter of an hour: the search is in ln days and must begin somewhere. */
const NEAREST_DAYS = 0.01
/**
 * The chance that the reserve is used up within so many days of the moment of the outlook.
 *
 *     Σ weight × Φ((rate × days of wear + bed-in fall × bed-in share then - level) / √variance)
 *     variance = level variance + process variance × days of wear + bed-in fall variance × (change of share)² + step² / 12
 *
 * The true reserve does not rise, so the chance of having run out is that of standing below nought at the end, and it
 * never falls with time.
 *
 * @source SRC-700 the wear model (docs/sources.md)
 * @returns a function of days, from 0 to 1
 */
export function chanceOfRunningOut({ wear, filtered, posterior, stepVariance }: Outlook): (daysAhead: number) => number {
  const { processVariance, bedInDays, bedInFall, bedInFallVariance } = wear
  const { rates, weights } = posterior
  const count = rates.length
  const levels: number[] = []
  const startScores: number[] = []
  const shareNow = bedInShare(wear, filtered.age)
  const varianceNow = filtered.levelVariance + stepVariance
  const scaleNow = 1 / Math.sqrt(varianceNow)
  for (let node = 0; node < count; node++) {
    const level = filtered.levelAtNoWear + filtered.levelByRate * rates[node]!
    levels.push(level)
    startScores.push((bedInFall * shareNow - level) * scaleNow)
  }
  return (daysAhead) => {
    const share = bedInShare(wear, filtered.age + daysAhead)
    const shareStep = share - shareNow
    const daysOfWear = daysAhead + bedInDays * shareStep
    const variance = varianceNow + processVariance * daysOfWear + bedInFallVariance * shareStep * shareStep
    const scale = 1 / Math.sqrt(variance)
    const fall = bedInFall * share
    let chance = 0
    for (let node = 0; node < count; node++) {
      // Growing variance alone would let a gland that has run out recover.
      const score = Math.max(startScores[node]!, (rates[node]! * daysOfWear + fall - levels[node]!) * scale)
      chance += weights[node]! * normalByTable(score)
    }
    return Math.min(1, chance)
  }
}

/** Where the search for a date begins: roughly the middle date, and roughly how far ln days scatter about it. */
export interface RoughDate {
  readonly days: number
  readonly logDeviation: number
}

/**
 * Turns the chance around: the days within which the reserve is used up with a given chance. A bracketed secant search
 * for the log-odds over ln days, where the curve is nearly straight; each answer is where the next search begins.
 *
 * @source SRC-706 search for a quantile (docs/sources.md)
 * @returns a function of the chance: 0 where it has run out already, Infinity beyond twenty years
 */
export function daysUntilChance(chanceWithin: (daysAhead: number) => number, rough: RoughDate): DaysUntil {
  const chanceNow = chanceWithin(0)
  const chanceAtEnd = chanceWithin(FARTHEST_DAYS)
  let nearby: Nearby = {
    logDays: Math.log(Math.max(1, Math.min(rough.days, FARTHEST_DAYS))),
    logOdds: 0,
    isOnCurve: false,
    slope: LOGISTIC_SCALE / Math.max(SMALLEST_DEVIATION, Math.min(rough.logDeviation, LARGEST_DEVIATION)),
  }
  return (chance) => {
    if (chanceNow >= chance) return 0
    if (chanceAtEnd < chance) return Infinity
    nearby = whereOddsAre(logOdds(chance), chanceWithin, nearby)
    return Math.exp(nearby.logDays)
  }
}

/** A point on the curve of log-odds over ln days, or a guess at one, and how steep the curve is there. */
interface Nearby {
  readonly isOnCurve: boolean
  readonly logDays: number
  readonly logOdds: number
  readonly slope: number
}

/** A normal curve of deviation 1 has log-odds that rise about so steeply in its middle. */
const LOGISTIC_SCALE = 1.7
const SMALLEST_DEVIATION = 0.05
const LARGEST_DEVIATION = 2
/** In log-odds: a ten-thousandth moves a date three years off by less than an hour. */
const CLOSE_ENOUGH = 1e-4
const NARROW_ENOUGH = 1e-9
const MOST_TRIES = 60

function whereOddsAre(wanted: number, chanceWithin: (daysAhead: number) => number, nearby: Nearby): Nearby {
  let low = Math.log(NEAREST_DAYS)
  let high = Math.log(FARTHEST_DAYS)
  let { logDays: at, logOdds: odds, isOnCurve, slope } = nearby
  for (let tries = 0; tries < MOST_TRIES && high - low > NARROW_ENOUGH; tries++) {
    let next = at + (wanted - odds) / slope
    if (!(next > low && next < high)) next = (low + high) / 2
    const nextOdds = logOdds(chanceWithin(Math.exp(next)))
    const rise = (nextOdds - odds) / (next - at)
    if (isOnCurve && rise > 0 && rise < Infinity) slope = rise
    isOnCurve = true
    at = next
    odds = nextOdds
    if (Math.abs(wanted - odds) < CLOSE_ENOUGH) break
    if (odds < wanted) low = at
    else high = at
  }
  return { logDays: at, logOdds: odds, isOnCurve, slope }
}

function logOdds(chance: number): number {
  return Math.log(Math.max(chance, 1e-300) / Math.max(1 - chance, 1e-16))
}
