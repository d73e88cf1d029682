import { type Millimetre, mm } from '@glandkeeper/units/quantity'
import type { Gland } from '../gland/gland.ts'

/** Which end of the travel is met first: the flange at the face, the nose in the box, the nut at the end of its thread. */
export type ReserveLimit = 'gap' | 'nose' | 'thread'

export interface Reserve {
  /** Follower travel still usable; zero or less means none. */
  readonly reserve: Millimetre
  readonly limitedBy: ReserveLimit
}

/**
 * Travel still usable: the least of
 *
 *     gap - keep clear            least gap of the two sides, mm
 *     nose - least engagement     a follower held by less nose than that is not guided, mm
 *     gap - gap at thread end     the nut has run out of thread there, mm
 *
 * The nose limit does not move with the follower: it caps what a gap may promise.
 *
 * @source SRC-103 reserve from shoulder to face, common practice (docs/sources.md)
 * @returns null when no gap is known
 * @example reserveOf(gland, { leastGap: mm(6.6), gapAtThreadEnd: null }) // → { reserve: 3.6, limitedBy: 'gap' }
 */
export function reserveOf(
  gland: Pick<Gland, 'keepClear' | 'noseLength' | 'leastEngagement'>,
  measured: { readonly leastGap: Millimetre | null; readonly gapAtThreadEnd: Millimetre | null },
): Reserve | null {
  const { leastGap, gapAtThreadEnd } = measured
  if (leastGap === null) return null
  const limits: Reserve[] = [{ reserve: mm(leastGap - gland.keepClear), limitedBy: 'gap' }]
  if (gland.noseLength !== null) limits.push({ reserve: mm(gland.noseLength - gland.leastEngagement), limitedBy: 'nose' })
  if (gapAtThreadEnd !== null) limits.push({ reserve: mm(leastGap - gapAtThreadEnd), limitedBy: 'thread' })
  return limits.reduce((least, limit) => (limit.reserve < least.reserve ? limit : least))
}

/** The smaller of two gaps; a side nobody measured does not count. */
export function leastGapOf(gapLeft: Millimetre | null, gapRight: Millimetre | null): Millimetre | null {
  if (gapLeft === null || gapRight === null) return gapLeft ?? gapRight
  return gapLeft < gapRight ? gapLeft : gapRight
}
