import { mm2, type SquareMillimetre } from '@glandkeeper/units/quantity'
import type { Outcome } from '../outcome.ts'
import { knownThread } from './known-thread.ts'
import type { StudThread, ThreadSeries } from './stud-threads.ts'

/**
 * Pitches taken off the nominal diameter to get the diameter of the stress area: midway between pitch and minor diameter.
 * Metric: the minor diameter with its rounded root, d - 1.2269 P. Unified: the sharp one, d - 1.2990 P.
 * Whitworth: a thread 0.640327 P deep has its pitch diameter one depth below the nominal and its minor diameter two.
 */
const METRIC = 0.9382
const UNIFIED = 0.9743
const WHITWORTH = 1.5 * 0.640327

const pitchesOff: Readonly<Record<ThreadSeries, number>> = {
  M: METRIC,
  MF: METRIC,
  UNC: UNIFIED,
  UNF: UNIFIED,
  BSW: WHITWORTH,
  BSF: WHITWORTH,
}

/** By which rule the area was worked out; no standard gives a stress area for Whitworth threads. */
export type StressAreaMethod = 'ISO 898-1' | 'ASME B1.1' | 'mean of pitch and minor diameter'

/**
 * Area that carries the tension in a threaded stud.
 *
 *     area = π/4 · (d - 0.9382 P)²        ISO metric, mm²
 *     area = π/4 · (d - 0.9743 P)²        unified, mm²
 *     area = π/4 · (d - 0.9604905 P)²     Whitworth, both series, mm²
 *
 * Holds for a full stud at its basic size; it knows nothing of a waisted shank, of corrosion or of wear.
 *
 * @source SRC-210 metric · SRC-211 unified · SRC-212 Whitworth (docs/sources.md)
 * @returns mm² and the rule, or `thread/unknown`
 * @example stressArea('M12').area // → 84.26636752380863
 */
export function stressArea(designation: string): Outcome<{ readonly area: SquareMillimetre; readonly method: StressAreaMethod }> {
  const found = knownThread(designation)
  if (!found.ok) return found
  return { ok: true, area: areaOf(found.thread), method: methodOf(found.thread.series) }
}

function areaOf({ nominalDiameter, pitch, series }: StudThread): SquareMillimetre {
  const diameter = nominalDiameter - pitchesOff[series] * pitch
  return mm2((Math.PI / 4) * diameter ** 2)
}

function methodOf(series: ThreadSeries): StressAreaMethod {
  if (series === 'M' || series === 'MF') return 'ISO 898-1'
  return series === 'UNC' || series === 'UNF' ? 'ASME B1.1' : 'mean of pitch and minor diameter'
}
