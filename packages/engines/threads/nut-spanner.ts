import { MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { type Millimetre, mm } from '@glandkeeper/units/quantity'
import type { Outcome } from '../outcome.ts'
import { knownThread } from './known-thread.ts'
import type { StudThread, ThreadSeries } from './stud-threads.ts'

/** Which hexagon a nut of this thread may have: a nut alone does not tell the thread. */
export type Hexagon = 'present' | 'before 1982' | 'plain' | 'heavy' | 'large' | 'small'

export interface Spanner {
  /** As marked on the spanner: `18 mm`, `3/4 in`, `1/2 W`. */
  readonly marking: string
  readonly acrossFlats: Millimetre
  readonly hexagon: Hexagon
}

/** Nominal diameter to width across flats. ISO 272 changed four sizes in 1982; old plant has both. */
const metricNow: Readonly<Record<number, number>> = {
  6: 10,
  8: 13,
  10: 16,
  12: 18,
  14: 21,
  16: 24,
  18: 27,
  20: 30,
  22: 34,
  24: 36,
  27: 41,
  30: 46,
  33: 50,
  36: 55,
}
const metricBefore1982: Readonly<Record<number, number>> = { 10: 17, 12: 19, 14: 22, 22: 32 }

/** Nut sizes by nominal size in inches: plain and heavy hexagon. */
const unified: Readonly<Record<string, readonly [plain: string, heavy: string]>> = {
  '1/4': ['7/16', '1/2'],
  '5/16': ['1/2', '9/16'],
  '3/8': ['9/16', '11/16'],
  '7/16': ['11/16', '3/4'],
  '1/2': ['3/4', '7/8'],
  '9/16': ['7/8', '15/16'],
  '5/8': ['15/16', '1-1/16'],
  '3/4': ['1-1/8', '1-1/4'],
  '7/8': ['1-5/16', '1-7/16'],
  '1': ['1-1/2', '1-5/8'],
  '1-1/8': ['1-11/16', '1-13/16'],
  '1-1/4': ['1-7/8', '2'],
  '1-3/8': ['2-1/16', '2-3/16'],
  '1-1/2': ['2-1/4', '2-3/8'],
}

/** Whitworth spanners are marked with the thread of the large hexagon; the small hexagon takes the spanner one size down. */
const whitworth: readonly (readonly [size: string, acrossFlatsInches: number])[] = [
  ['3/16', 0.445],
  ['1/4', 0.525],
  ['5/16', 0.6],
  ['3/8', 0.71],
  ['7/16', 0.82],
  ['1/2', 0.92],
  ['9/16', 1.01],
  ['5/8', 1.1],
  ['11/16', 1.2],
  ['3/4', 1.3],
  ['7/8', 1.48],
  ['1', 1.67],
  ['1-1/8', 1.86],
  ['1-1/4', 2.05],
  ['1-3/8', 2.22],
  ['1-1/2', 2.41],
]

/**
 * Spanners that may fit the nut of this thread, the likeliest first: offer all of them, the nut decides.
 * Nominal widths; it knows nothing of special, jam or locally made nuts.
 *
 * @source SRC-220 metric · SRC-221 unified · SRC-222 Whitworth (docs/sources.md)
 * @returns one or two spanners, or `thread/unknown`
 * @example spannersOf('M12').spanners.map((spanner) => spanner.acrossFlats) // → [18, 19]
 */
export function spannersOf(designation: string): Outcome<{ readonly spanners: readonly Spanner[] }> {
  const found = knownThread(designation)
  if (!found.ok) return found
  return { ok: true, spanners: spannersBySeries[found.thread.series](found.thread) }
}

const spannersBySeries: Readonly<Record<ThreadSeries, (thread: StudThread) => Spanner[]>> = {
  M: metricSpanners,
  MF: metricSpanners,
  UNC: unifiedSpanners,
  UNF: unifiedSpanners,
  BSW: (thread) => [whitworthSpanner(thread, 'large'), whitworthSpanner(thread, 'small')].flat(),
  BSF: (thread) => whitworthSpanner(thread, 'small'),
}

function metricSpanners({ nominalDiameter }: StudThread): Spanner[] {
  const widths = [
    ['present', metricNow[nominalDiameter]],
    ['before 1982', metricBefore1982[nominalDiameter]],
  ] as const
  return widths.flatMap(([hexagon, width]) =>
    width === undefined ? [] : [{ marking: `${width} mm`, acrossFlats: mm(width), hexagon }],
  )
}

function unifiedSpanners({ designation }: StudThread): Spanner[] {
  const [plain, heavy] = unified[sizeOf(designation)] ?? []
  const widths = [
    ['plain', plain],
    ['heavy', heavy],
  ] as const
  return widths.flatMap(([hexagon, width]) =>
    width === undefined ? [] : [{ marking: `${width} in`, acrossFlats: inchWidth(width), hexagon }],
  )
}

function whitworthSpanner({ designation }: StudThread, hexagon: 'large' | 'small'): Spanner[] {
  const large = whitworth.findIndex(([size]) => size === sizeOf(designation))
  const spanner = whitworth[hexagon === 'large' ? large : large - 1]
  if (spanner === undefined) return []
  const [size, acrossFlatsInches] = spanner
  return [{ marking: `${size} W`, acrossFlats: mm(acrossFlatsInches * MILLIMETRES_PER_INCH), hexagon }]
}

/** `1-1/8` of `1-1/8-7 UNC`. */
function sizeOf(designation: string): string {
  return designation.replace(/-\d+ [A-Z]+$/, '')
}

function inchWidth(fraction: string): Millimetre {
  const sum = fraction.split('-').reduce((total, part) => {
    const [top, bottom] = part.split('/').map(Number)
    return total + (top ?? 0) / (bottom ?? 1)
  }, 0)
  return mm(sum * MILLIMETRES_PER_INCH)
}
