import type { Outcome } from '../outcome.ts'
import { knownThread } from './known-thread.ts'
import { type StudThread, studThreads, type ThreadSeries } from './stud-threads.ts'

/** `runs on`: same pitch, so a nut goes its whole height. `starts and binds`: the pitches part after a turn or two. */
export type Likeness = 'runs on' | 'starts and binds'

export interface MistakableThread {
  readonly designation: string
  readonly likeness: Likeness
  readonly caution: string
}

/** Within the play of a common fit; M8 and 5/16 inch are 0.0625 mm apart. */
const SAME_DIAMETER_MM = 0.1
/** A half per cent is 0.04 mm over the eight threads of a nut. */
const SAME_PITCH = 0.005
/** 1/2-12 on 1/2-13 differs by 8 per cent and is known to start; set by us. */
const NEAR_PITCH = 0.1

/**
 * Other threads a nut or stud of this one can be started on by mistake: nearly the same diameter and nearly the same pitch.
 *
 *     diameters within 0.1 mm, pitches within 0.5 %: runs on; within 10 %: starts and binds
 *
 * Compares basic sizes. It does not list a stud that is loose in a larger nut, nor worn or home-made threads.
 *
 * @source SRC-230 most BSW and UNC sizes start on each other · SRC-231 limits of likeness (docs/sources.md)
 * @returns the likest first, none when nothing is near; or `thread/unknown`
 * @example mistakableThreads('5/8-11 UNC').threads.map((thread) => thread.designation) // → ['5/8-11 BSW']
 */
export function mistakableThreads(designation: string): Outcome<{ readonly threads: readonly MistakableThread[] }> {
  const found = knownThread(designation)
  if (!found.ok) return found
  const { thread } = found
  const threads = studThreads
    .filter((other) => other !== thread && isNear(thread, other))
    .toSorted((one, other) => pitchDifference(thread, one) - pitchDifference(thread, other))
    .map((other) => describe(thread, other))
  return { ok: true, threads }
}

function isNear(thread: StudThread, other: StudThread): boolean {
  const apart = Math.abs(thread.nominalDiameter - other.nominalDiameter)
  return apart <= SAME_DIAMETER_MM && pitchDifference(thread, other) <= NEAR_PITCH
}

/** As a share of the coarser pitch, so that it is the same from either side. */
function pitchDifference(thread: StudThread, other: StudThread): number {
  return Math.abs(thread.pitch - other.pitch) / Math.max(thread.pitch, other.pitch)
}

function describe(thread: StudThread, other: StudThread): MistakableThread {
  const likeness = pitchDifference(thread, other) <= SAME_PITCH ? 'runs on' : 'starts and binds'
  const angles = [flankAngle[thread.series], flankAngle[other.series]]
  const angle = angles[0] === angles[1] ? '' : `, flanks ${angles[0]}° against ${angles[1]}°`
  const caution =
    likeness === 'runs on'
      ? `${other.designation} has the same pitch and runs on${angle}: it holds by part of its flanks only. Gauge it, never mix.`
      : `${other.designation} starts and then binds${angle}: what feels like load is a spoiling thread. Gauge it, never force.`
  return { designation: other.designation, likeness, caution }
}

const flankAngle: Readonly<Record<ThreadSeries, number>> = { M: 60, MF: 60, UNC: 60, UNF: 60, BSW: 55, BSF: 55 }
