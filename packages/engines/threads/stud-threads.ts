import { MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { type Millimetre, mm, type Turn } from '@glandkeeper/units/quantity'

/** One size of a standard thread series. */
export interface StudThread {
  /** As on a drawing: `M12`, `1/2-13 UNC`, `1/2-12 BSW`. */
  readonly designation: string
  readonly nominalDiameter: Millimetre
  /** Distance the nut travels in one turn. */
  readonly pitch: Millimetre
  readonly series: ThreadSeries
}

/** M is ISO metric coarse, MF ISO metric fine. */
export type ThreadSeries = 'M' | 'MF' | 'UNC' | 'UNF' | 'BSW' | 'BSF'

export type ThreadProblem = { readonly code: 'thread/unknown'; readonly designation: string }

const metric: readonly (readonly [diameter: number, pitch: number])[] = [
  [6, 1],
  [8, 1.25],
  [10, 1.5],
  [12, 1.75],
  [14, 2],
  [16, 2],
  [18, 2.5],
  [20, 2.5],
  [22, 2.5],
  [24, 3],
  [27, 3],
  [30, 3.5],
  [33, 3.5],
  [36, 4],
]

/** Fine pitches of the sizes selected for screws, bolts and nuts; other fine pitches exist, and stay unknown here. */
const metricFine: readonly (readonly [diameter: number, pitch: number])[] = [
  [8, 1],
  [10, 1],
  [10, 1.25],
  [12, 1.25],
  [12, 1.5],
  [14, 1.5],
  [16, 1.5],
  [18, 1.5],
  [18, 2],
  [20, 1.5],
  [20, 2],
  [22, 1.5],
  [22, 2],
  [24, 2],
  [27, 2],
  [30, 2],
  [33, 2],
  [36, 3],
]

/** Threads per inch by nominal size; a size missing from a series is not in the table it was read from. */
const inchSizes = [
  '1/4',
  '5/16',
  '3/8',
  '7/16',
  '1/2',
  '9/16',
  '5/8',
  '11/16',
  '3/4',
  '7/8',
  '1',
  '1-1/8',
  '1-1/4',
  '1-3/8',
  '1-1/2',
] as const
const threadsPerInch: Readonly<Record<'UNC' | 'UNF' | 'BSW' | 'BSF', readonly (number | null)[]>> = {
  UNC: [20, 18, 16, 14, 13, 12, 11, null, 10, 9, 8, 7, 7, 6, 6],
  UNF: [28, 24, 24, 20, 20, 18, 18, null, 16, 14, 12, 12, 12, 12, 12],
  BSW: [20, 18, 16, 14, 12, 12, 11, 11, 10, 9, 8, 7, 7, 6, 6],
  BSF: [26, 22, 20, 18, 16, 16, 14, 14, 12, 11, 10, 9, 9, 8, 8],
}

/**
 * Every thread the program knows, ISO metric coarse and fine and four inch series.
 *
 * @source SRC-201 metric coarse pitches · SRC-202 UNC and UNF · SRC-203 BSW and BSF · SRC-205 metric fine (docs/sources.md)
 */
export const studThreads: readonly StudThread[] = [
  ...metric.map(([diameter, pitch]) => metricThread(`M${diameter}`, diameter, pitch, 'M')),
  ...metricFine.map(([diameter, pitch]) => metricThread(`M${diameter}x${pitch}`, diameter, pitch, 'MF')),
  ...(['UNC', 'UNF', 'BSW', 'BSF'] as const).flatMap((series) =>
    threadsPerInch[series].flatMap((perInch, index) => {
      const size = inchSizes[index]
      if (perInch === null || size === undefined) return []
      return [
        {
          designation: `${size}-${perInch} ${series}`,
          nominalDiameter: mm(inches(size) * MILLIMETRES_PER_INCH),
          pitch: mm(MILLIMETRES_PER_INCH / perInch),
          series,
        },
      ]
    }),
  ),
]

const byDesignation = new Map(studThreads.map((thread) => [foldedDesignation(thread.designation), thread]))

/**
 * Looks a thread up by its designation. Capitals, spaces and a written-out metric coarse pitch do not matter.
 *
 * @returns the thread, or `thread/unknown`; a metric pitch that is not listed is unknown rather than taken for coarse
 * @example findThread('m12 x 1.75') // → { ok: true, thread: { designation: 'M12', nominalDiameter: 12, pitch: 1.75, series: 'M' } }
 */
export function findThread(
  designation: string,
): { readonly ok: true; readonly thread: StudThread } | { readonly ok: false; readonly problem: ThreadProblem } {
  const thread = byDesignation.get(foldedDesignation(designation))
  return thread ? { ok: true, thread } : { ok: false, problem: { code: 'thread/unknown', designation } }
}

export type TravelResult =
  | { readonly ok: true; readonly travel: Millimetre }
  | { readonly ok: false; readonly problem: ThreadProblem }

/**
 * How far a nut, and the follower under it, moves in so many turns: turns times pitch.
 * Holds while the nut bears on the follower; it knows nothing of a nut that is loose.
 *
 * @source SRC-204 lead of a single-start thread equals its pitch (docs/sources.md)
 * @returns millimetres, negative when slackened, or `thread/unknown`
 * @example travelOfTurns('M12', turns(0.5)) // → { ok: true, travel: 0.875 }
 */
export function travelOfTurns(designation: string, taken: Turn): TravelResult {
  const found = findThread(designation)
  return found.ok ? { ok: true, travel: mm(found.thread.pitch * taken) } : found
}

function metricThread(designation: string, diameter: number, pitch: number, series: ThreadSeries): StudThread {
  return { designation, nominalDiameter: mm(diameter), pitch: mm(pitch), series }
}

function inches(size: string): number {
  return size.split('-').reduce((sum, part) => {
    const [top, bottom] = part.split('/').map(Number)
    return sum + (top ?? 0) / (bottom ?? 1)
  }, 0)
}

/** `M12x1.75` is `M12`: the coarse pitch may be written out. Any other pitch stays as it is. */
function foldedDesignation(designation: string): string {
  const plain = designation.toUpperCase().replaceAll(/\s+/g, '').replaceAll('×', 'X')
  const written = /^M(\d+)X([\d.]+)$/.exec(plain)
  if (!written) return plain
  const [diameter, pitch] = [Number(written[1]), Number(written[2])]
  return metric.some((coarse) => coarse[0] === diameter && coarse[1] === pitch) ? `M${diameter}` : `M${diameter}X${pitch}`
}
