import type { Outcome } from '../outcome.ts'
import { refusedConfidence } from './admissible.ts'
import { normalQuantile } from './normal.ts'
import { refusedUnits, type WatchedUnit } from './repeat-events.ts'

export interface MeanCumulativeStep {
  readonly age: number
  /** Units still watched at that age. */
  readonly atRisk: number
  /** Events at that age, over all units. */
  readonly events: number
  /** Mean number of events of a unit up to and with that age. */
  readonly mean: number
  /** Null where a single unit is left, or where the estimate of the variance is below 0, as it may be with few units. */
  readonly standardError: number | null
  readonly lower: number | null
  readonly upper: number | null
}

/**
 * Mean number of events per unit by age, from units watched for different times (Nelson).
 *
 *     mean = Σ events at an age / units watched then            over the ages up to this one
 *     variance: Nelson's unbiased one, of the counts of units that may depend on each other from age to age
 *     limits: mean ± z error ('plain'), mean · exp(± z error / mean) ('log', never below 0)
 *
 * Nothing is supposed of the events but that the length of watch has nothing to do with them. Units repaired as good as new or as
 * bad as old are counted alike.
 *
 * @source SRC-316 mean cumulative function (docs/sources.md)
 * @returns a step for each age with an event; none when nothing happened; or a named problem
 * @example meanCumulativeFunction({ units: [{ events: [3, 3], watchedTo: 9 }, { events: [], watchedTo: 5 }], confidence: 0.95, scale: 'plain' }).steps[0].mean // → 1
 */
export function meanCumulativeFunction(input: {
  readonly units: readonly WatchedUnit[]
  readonly confidence: number
  readonly scale: 'plain' | 'log'
}): Outcome<{ steps: readonly MeanCumulativeStep[] }> {
  const { units, confidence, scale } = input
  const refused = refusedUnits(units) ?? refusedConfidence(confidence)
  if (refused) return refused
  const z = -normalQuantile((1 - confidence) / 2)
  const countAt = varianceCounter(units)
  let mean = 0
  const steps = eventsByAge(units).map(({ age, ofUnit }): MeanCumulativeStep => {
    const { atRisk, events, variance } = countAt(age, ofUnit)
    mean += events / atRisk
    const standardError = variance === null || variance < 0 ? null : Math.sqrt(variance)
    return { age, atRisk, events, mean, standardError, ...limits(mean, standardError, z, scale) }
  })
  return { ok: true, steps }
}

/** At each age with an event, in order: how many each unit had. */
function eventsByAge(units: readonly WatchedUnit[]): { age: number; ofUnit: ReadonlyMap<number, number> }[] {
  const byAge = new Map<number, Map<number, number>>()
  for (const [unit, { events }] of units.entries()) {
    for (const age of events) {
      const ofUnit = byAge.get(age) ?? new Map<number, number>()
      ofUnit.set(unit, (ofUnit.get(unit) ?? 0) + 1)
      byAge.set(age, ofUnit)
    }
  }
  return [...byAge].map(([age, ofUnit]) => ({ age, ofUnit })).toSorted((one, other) => one.age - other.age)
}

/**
 * Nelson's variance, age by age in rising order. The new mean count d̄ brings its own variance and its covariance with all before:
 *
 *     S / r + 2 Σ (d - d̄) A / (r - 1)        over the r units watched; S their sample variance
 *
 * with A the sum of earlier counts of a unit, each divided by the number watched then. Units without an event at the age enter by
 * their number and their sum of A, so that a step costs only its events.
 */
function varianceCounter(units: readonly WatchedUnit[]) {
  const leaving = units
    .map(({ watchedTo }, unit) => ({ watchedTo, unit }))
    .toSorted((one, other) => one.watchedTo - other.watchedTo)
  const earlier = units.map(() => 0)
  let gone = 0
  let earlierOfWatched = 0
  let variance: number | null = 0
  return (age: number, ofUnit: ReadonlyMap<number, number>) => {
    for (; leaving[gone]!.watchedTo < age; gone++) earlierOfWatched -= earlier[leaving[gone]!.unit]!
    const atRisk = units.length - gone
    const counts = [...ofUnit]
    const events = counts.reduce((sum, [, count]) => sum + count, 0)
    const meanCount = events / atRisk
    const ofOthers = (atRisk - counts.length) * meanCount ** 2
    const squares = counts.reduce((sum, [, count]) => sum + (count - meanCount) ** 2, ofOthers)
    const together = counts.reduce((sum, [unit, count]) => sum + count * earlier[unit]!, -meanCount * earlierOfWatched)
    // With one unit left nothing tells how much units differ, and nothing later can.
    if (atRisk < 2) variance = null
    if (variance !== null) variance += (squares / atRisk + 2 * together) / (atRisk - 1)
    for (const [unit, count] of counts) earlier[unit]! += count / atRisk
    earlierOfWatched += events / atRisk
    return { atRisk, events, variance }
  }
}

function limits(mean: number, error: number | null, z: number, scale: 'plain' | 'log') {
  if (error === null) return { lower: null, upper: null }
  if (scale === 'plain') return { lower: mean - z * error, upper: mean + z * error }
  const reach = Math.exp((z * error) / mean)
  return { lower: mean / reach, upper: mean * reach }
}
