import { type Outcome, refuse } from '../outcome.ts'
import { refusedFigures } from './admissible.ts'
import { chiSquaredAbove, chiSquaredBelow } from './chi-squared.ts'
import { normalDistribution } from './normal.ts'
import { refusedUnits, type WatchedUnit } from './repeat-events.ts'
import { rootByNewton } from './root.ts'

export interface PowerLawFit {
  readonly events: number
  /** Exponent of age: below 1 events grow rarer, above 1 more frequent. Of greatest likelihood. */
  readonly exponent: number
  /** The exponent with its bias for few events taken away. */
  readonly unbiasedExponent: number
  /** Events of one unit up to age 1, of greatest likelihood. */
  readonly factor: number
  /** The factor that goes with the unbiased exponent. */
  readonly unbiasedFactor: number
}

/**
 * Repeat events that grow rarer or more frequent with age: the power law process (Crow), by greatest likelihood.
 *
 *     expected events of a unit up to age T = factor · T^exponent
 *     one length of watch T:  exponent = N / Σ ln(T / age)        unbiased: (N - 1) / Σ ln(T / age)
 *     factor = N / Σ T^exponent
 *
 * With different lengths of watch the exponent is the root of the likelihood's slope, and the correction (N - 1)/N approximate.
 * Repair leaves a unit as it was before (as bad as old). The watch ends at a time, not with an event.
 *
 * @source SRC-317 power law process (docs/sources.md)
 * @returns exponents and factors, or a named problem
 * @example fitPowerLaw([{ events: [1, 1], watchedTo: Math.exp(1) }]).unbiasedExponent // → 0.5
 */
export function fitPowerLaw(units: readonly WatchedUnit[]): Outcome<PowerLawFit> {
  const refused = refusedUnits(units)
  if (refused) return refused
  const { events, logSum } = tally(units)
  if (events < 2) return refuse('repeat-events/too-few', 'units', `a trend needs two events or more, not ${events}`)
  if (logSum === 0)
    return refuse('repeat-events/all-at-end', 'units', 'every event lies at the end of its watch: no exponent fits')
  const exponent = exponentOf(units, events)
  const unbiasedExponent = (exponent * (events - 1)) / events
  const fit = {
    events,
    exponent,
    unbiasedExponent,
    factor: events / sumOfPowers(units, exponent),
    unbiasedFactor: events / sumOfPowers(units, unbiasedExponent),
  }
  return refusedFigures('units', Object.values(fit)) ?? { ok: true, ...fit }
}

/**
 * Mean time between events of one unit at an age, were the trend to stop there.
 *
 *     MTBF = 1 / (factor · exponent · age^(exponent - 1))
 *
 * @source SRC-317 power law process (docs/sources.md)
 * @param input.factor with the exponent it belongs to
 * @returns in the unit of the ages, or a named problem
 * @example meanTimeBetween({ factor: 0.5, exponent: 1, age: 700 }) // → { ok: true, time: 2 }
 */
export function meanTimeBetween(input: {
  readonly factor: number
  readonly exponent: number
  readonly age: number
}): Outcome<{ time: number }> {
  for (const [field, value] of Object.entries(input)) {
    if (!(value > 0 && value < Infinity))
      return refuse('number/not-positive', field, `the ${field} must be more than 0, not ${value}`)
  }
  const { factor, exponent, age } = input
  const time = age ** (1 - exponent) / factor / exponent
  return refusedFigures('age', [time]) ?? { ok: true, time }
}

export interface TrendTests {
  /** Normal deviate: below 0 events lie early (growing rarer), above 0 late. */
  readonly laplace: number
  /** Chance of a deviate as large either way, were there no trend. */
  readonly laplaceP: number
  /** 2 Σ ln(T / age): large where events lie early. */
  readonly chiSquared: number
  readonly degreesOfFreedom: number
  /** Chance of so large a figure without a trend: small speaks for growing rarer. */
  readonly rarerP: number
  /** Chance of so small a figure without a trend: small speaks for growing more frequent. */
  readonly moreFrequentP: number
}

/**
 * Do events grow rarer or more frequent? Laplace's test and the chi-squared test of the power law process (2S).
 *
 *     U = Σ (age - T/2) / √(Σ T²/12)         over all events, T the watch of their unit
 *     2S = 2 Σ ln(T / age)                  chi-squared, 2 N degrees of freedom, without a trend
 *
 * Laplace's needs some four events. Both suppose that without a trend events come singly and by chance alone.
 *
 * @source SRC-317 power law process (docs/sources.md)
 * @returns both tests, or a named problem
 * @example trendTests([{ events: [1, 2, 3], watchedTo: 4 }]).laplace // → 0
 */
export function trendTests(units: readonly WatchedUnit[]): Outcome<TrendTests> {
  const refused = refusedUnits(units)
  if (refused) return refused
  const { events, logSum } = tally(units)
  if (events === 0) return refuse('repeat-events/too-few', 'units', 'a trend needs an event')
  const longest = longestWatch(units)
  let offMiddle = 0
  let spread = 0
  for (const { events: ages, watchedTo } of units) {
    const watch = watchedTo / longest
    for (const age of ages) offMiddle += age / longest - watch / 2
    spread += (ages.length * watch * watch) / 12
  }
  const laplace = offMiddle / Math.sqrt(spread)
  const tests = {
    laplace,
    laplaceP: 2 * normalDistribution(-Math.abs(laplace)),
    chiSquared: 2 * logSum,
    degreesOfFreedom: 2 * events,
    rarerP: chiSquaredAbove(2 * logSum, 2 * events),
    moreFrequentP: chiSquaredBelow(2 * logSum, 2 * events),
  }
  return refusedFigures('units', Object.values(tests)) ?? { ok: true, ...tests }
}

/** Number of events, and the sum of ln(watch / age) over them. */
function tally(units: readonly WatchedUnit[]): { events: number; logSum: number } {
  const logs = units.flatMap(({ events, watchedTo }) => events.map((age) => Math.log(watchedTo / age)))
  return { events: logs.length, logSum: logs.reduce((sum, log) => sum + log, 0) }
}

function longestWatch(units: readonly WatchedUnit[]): number {
  return units.reduce((longest, { watchedTo }) => Math.max(longest, watchedTo), 0)
}

function sumOfPowers(units: readonly WatchedUnit[], exponent: number): number {
  return units.reduce((sum, { watchedTo }) => sum + watchedTo ** exponent, 0)
}

/**
 * Root of the likelihood's slope, N/b + Σ ln age - N Σ T^b ln T / Σ T^b, with ages as parts of the longest watch. The slope falls
 * as b grows; in ln b it is sought with the sign turned.
 */
function exponentOf(units: readonly WatchedUnit[], events: number): number {
  const longest = longestWatch(units)
  const logWatches = units.map(({ watchedTo }) => Math.log(watchedTo / longest))
  const logAges = units.flatMap((unit) => unit.events.map((age) => Math.log(age / longest)))
  const meanLogAge = logAges.reduce((sum, log) => sum + log, 0) / events
  const weightedAt = (exponent: number) => {
    let [whole, first, second] = [0, 0, 0]
    for (const log of logWatches) {
      const power = Math.exp(exponent * log)
      whole += power
      first += power * log
      second += power * log * log
    }
    return { mean: first / whole, spread: second / whole - (first / whole) ** 2 }
  }
  const logExponent = rootByNewton({
    from: -50,
    to: 50,
    start: 0,
    valueAt: (at) => weightedAt(Math.exp(at)).mean - meanLogAge - Math.exp(-at),
    slopeAt: (at) => weightedAt(Math.exp(at)).spread * Math.exp(at) + Math.exp(-at),
  })
  return Math.exp(logExponent)
}
