import { type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'
import type { Outcome } from '../outcome.ts'
import { DUST, firstNotCount, firstNotLengthOrNought, firstNotShare } from './dimensions.ts'
import { type RingInput, ringLength } from './ring-length.ts'

/** Rings cut to see the length is right before the set is cut, for one kit. Set by us. */
export const TRIAL_RINGS = 1
/** Share of the length added for frayed ends and short pieces. Set by us. */
export const WASTE_SHARE = ratio(0.1)

/**
 * Cord for the rings of some like valves: what to draw from the store.
 *
 *     wound on a bar : for each valve   (rings + 1) · mid length        the first and last wrap are never whole
 *     cut in a row   : for each valve   rings · (edge length + kerf) + cut offset
 *     cut one by one : for each valve   rings · (overall length + kerf)
 *     needed         : all valves and trial rings, times 1 + waste share       mm
 *
 * In a row along one cord two neighbours share a parallel cut, so the offset of a skive is lost once for each valve;
 * one by one it is lost at each ring. A trial ring is a piece by itself. A knife has no kerf. It knows nothing of the
 * length on the reel.
 *
 * @source SRC-102 length at mid-width · SRC-112 wraps · SRC-113 pieces added up · SRC-114 trial and waste, set by us (docs/sources.md)
 * @returns lengths in mm, and whole metres rounded up
 * @example cordNeeded({ stemDiameter: mm(28), section: mm(8.5), rings: 5, valves: 3, cutting: 'in a row' }).wholeMetres // → 3
 */
export function cordNeeded(
  input: RingInput & {
    readonly rings: number
    readonly valves: number
    readonly cutting: 'wound on a bar' | 'in a row' | 'one by one'
    readonly kerf?: Millimetre
    readonly trialRings?: number
    readonly wasteShare?: Ratio
  },
): Outcome<{
  perValve: Millimetre
  pieces: number
  netLength: Millimetre
  waste: Millimetre
  needed: Millimetre
  wholeMetres: number
}> {
  const { rings, valves, cutting, kerf = mm(0), trialRings = TRIAL_RINGS, wasteShare = WASTE_SHARE } = input
  const fault =
    firstNotCount({ rings, valves }) ??
    firstNotCount({ trialRings }, 0) ??
    firstNotLengthOrNought({ kerf }) ??
    firstNotShare({ wasteShare })
  if (fault) return fault
  const ring = ringLength(input)
  if (!ring.ok) return ring
  const alone = ring.overallLength + kerf
  const perValve = {
    'wound on a bar': (rings + 1) * ring.midLength,
    'in a row': rings * (ring.edgeLength + kerf) + ring.cutOffset,
    'one by one': rings * alone,
  }[cutting]
  const netLength = valves * perValve + trialRings * alone
  const waste = netLength * wasteShare
  return {
    ok: true,
    perValve: mm(perValve),
    pieces: rings * valves + trialRings,
    netLength: mm(netLength),
    waste: mm(waste),
    needed: mm(netLength + waste),
    wholeMetres: Math.ceil((netLength + waste) / 1000 - DUST),
  }
}
