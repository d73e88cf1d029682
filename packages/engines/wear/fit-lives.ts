import { type Outcome, refuse } from '../outcome.ts'
import { type LifeRecord, type LifeSeries, seriesOf } from './life.ts'
import type { WearParameters } from './prior.ts'
import { readingErrorOf, screened } from './screening.ts'

/** One packing life for the fit. Finished lives belong in it as much as present ones, or slow wear is all that is seen. */
export interface FitLife {
  /** Service and packing family, or whatever makes valves alike. */
  readonly group: string
  readonly valve: string
  readonly life: LifeRecord
}

/** The readings of many lives end to end, with where each begins. */
export interface LivesEndToEnd {
  readonly ages: Float64Array
  readonly reserves: Float64Array
  /** One more than there are lives: the last is the end. */
  readonly starts: Int32Array
  readonly groupOf: Int32Array
  readonly groups: readonly string[]
  readonly valves: readonly string[]
  readonly readingsLeftOut: number
}

/**
 * Lays the readings of many lives end to end, gross errors left out.
 *
 * @source SRC-705 screening of gross errors (docs/sources.md)
 * @returns lives with at least one reading, or what about one of them cannot be used
 */
export function layEndToEnd(lives: readonly FitLife[], wear: WearParameters): Outcome<{ readonly lives: LivesEndToEnd }> {
  const series: LifeSeries[] = []
  for (const { valve, life } of lives) {
    const one = seriesOf(life)
    if (!one.ok) return refuse(one.problem.code, 'lives', `valve ${valve}: ${one.problem.detail}`)
    series.push(one)
  }
  const readingError = readingErrorOf(wear, series)
  const kept: { readonly ages: readonly number[]; readonly reserves: readonly number[] }[] = []
  const valves: string[] = []
  const groupIndexes: number[] = []
  const indexOf = new Map<string, number>()
  let readings = 0
  let readingsLeftOut = 0
  for (const [index, { group, valve }] of lives.entries()) {
    if (!indexOf.has(group)) indexOf.set(group, indexOf.size)
    const { ages, reserves, leftOut } = screened(wear, series[index]!, readingError)
    readingsLeftOut += leftOut.length
    if (ages.length === 0) continue
    kept.push({ ages, reserves })
    valves.push(valve)
    groupIndexes.push(indexOf.get(group)!)
    readings += ages.length
  }
  const ages = new Float64Array(readings)
  const reserves = new Float64Array(readings)
  const starts = new Int32Array(kept.length + 1)
  for (const [index, one] of kept.entries()) {
    ages.set(one.ages, starts[index])
    reserves.set(one.reserves, starts[index])
    starts[index + 1] = starts[index]! + one.ages.length
  }
  const groups = [...indexOf.keys()]
  return { ok: true, lives: { ages, reserves, starts, groupOf: Int32Array.from(groupIndexes), groups, valves, readingsLeftOut } }
}

/** One of the lives, as the filter takes it. */
export function stretchOf(lives: LivesEndToEnd, index: number) {
  const from = lives.starts[index]!
  return { ages: lives.ages, reserves: lives.reserves, from, count: lives.starts[index + 1]! - from }
}
