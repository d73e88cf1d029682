import { type Millimetre, mm } from '@glandkeeper/units/quantity'
import type { Outcome } from '../outcome.ts'
import { type ReserveLimit, reserveOf } from '../reserve/reserve.ts'
import { type PackedBox, spaceIn } from './box-space.ts'
import { DUST, firstNotCount, firstNotLengthOrNought, inMillimetres } from './dimensions.ts'

export interface RingSetFigures {
  readonly looseHeight: Millimetre
  readonly consolidatedHeight: Millimetre
  /** What loading takes up of the loose height. */
  readonly takeUp: Millimetre
  /** Nose in the box before anything is pressed, after loading, and on the last ring loose over seated ones. */
  readonly entryLoose: Millimetre
  readonly entryAfter: Millimetre
  readonly entryOnLastRing: Millimetre
  /** Flange to face after loading; 0 where the flange meets the face before the nose meets the packing. */
  readonly expectedGap: Millimetre
  readonly expectedReserve: Millimetre
  readonly limitedBy: ReserveLimit
}

export interface RingSetVerdict {
  readonly verdict: 'good' | 'one more ring' | 'one ring too many'
  /** Nose that enters on the last ring, or that would enter on another one where that still goes in. */
  readonly entry: Millimetre
  readonly reason: string
  /** What a good count still leaves to be said: the follower has no travel when this set is loaded. */
  readonly findings: readonly ('ring-set/no-reserve' | 'ring-set/nose-does-not-reach')[]
}

/**
 * What a given number of rings will look like in the box, before and after loading.
 *
 *     loose height        = n · section                                   mm
 *     consolidated height = n · section · (1 - c)
 *     take-up             = loose - consolidated
 *     entry on last ring  = available - (n - 1) · section · (1 - c) - section
 *     expected gap        = nose - (available - consolidated), not below 0
 *     expected reserve    = the least of gap - keep clear and nose - least engagement
 *
 * One ring too many: the follower enters the last loose ring by less than the least engagement. One more ring: over
 * this set seated, another loose one would still leave the wanted entry. Entries below 0 stand out of the box.
 * Thread left on the studs, springback and a stem to one side are not known here.
 *
 * @source SRC-117 heights and gap · SRC-103 reserve · SRC-118 one by one (docs/sources.md)
 * @returns heights, entries, gap, reserve and verdict, or the figure at fault
 * @example ringSet({ boxDepth: mm(48), section: mm(8), consolidation: ratio(0.25), noseLength: mm(20), leastEngagement: mm(3.2), keepClear: mm(3), rings: 6 }).expectedReserve // → 5
 * @example ringSet({ boxDepth: mm(48), section: mm(8), consolidation: ratio(0.25), noseLength: mm(20), leastEngagement: mm(3.2), keepClear: mm(3), rings: 7 }).verdict // → 'good'
 */
export function ringSet(
  input: PackedBox & { readonly keepClear: Millimetre; readonly rings: number },
): Outcome<RingSetFigures & RingSetVerdict> {
  const { section, rings, keepClear, noseLength, leastEngagement } = input
  const fault = firstNotCount({ rings }) ?? firstNotLengthOrNought({ keepClear })
  if (fault) return fault
  const space = spaceIn(input)
  if (!space.ok) return space
  const { available, seatedHeight, followerEntry } = space
  const looseHeight = rings * section
  const consolidatedHeight = rings * seatedHeight
  const depthToPacking = available - consolidatedHeight
  const expectedGap = mm(Math.max(0, noseLength - depthToPacking))
  const reserve = reserveOf({ keepClear, noseLength, leastEngagement }, { leastGap: expectedGap, gapAtThreadEnd: null })
  const entryOnLastRing = mm(available - (rings - 1) * seatedHeight - section)
  const entryOnAnother = mm(available - consolidatedHeight - section)
  return {
    ok: true,
    looseHeight: mm(looseHeight),
    consolidatedHeight: mm(consolidatedHeight),
    takeUp: mm(looseHeight - consolidatedHeight),
    entryLoose: entering(available - looseHeight, noseLength),
    entryAfter: entering(depthToPacking, noseLength),
    entryOnLastRing: entering(entryOnLastRing, noseLength),
    expectedGap,
    expectedReserve: mm(reserve?.reserve ?? 0),
    limitedBy: reserve?.limitedBy ?? 'gap',
    ...verdictOf({ entryOnLastRing, entryOnAnother, leastEngagement, followerEntry: mm(followerEntry) }),
    findings: [
      ...(depthToPacking > noseLength + DUST ? (['ring-set/nose-does-not-reach'] as const) : []),
      ...((reserve?.reserve ?? 0) <= DUST ? (['ring-set/no-reserve'] as const) : []),
    ],
  }
}

/** No more of a nose can be in the box than there is of it. */
function entering(depth: number, noseLength: Millimetre): Millimetre {
  return mm(Math.min(depth, noseLength))
}

function verdictOf(entries: {
  readonly entryOnLastRing: Millimetre
  readonly entryOnAnother: Millimetre
  readonly leastEngagement: Millimetre
  readonly followerEntry: Millimetre
}): Omit<RingSetVerdict, 'findings'> {
  const { entryOnLastRing, entryOnAnother, leastEngagement, followerEntry } = entries
  if (entryOnLastRing < leastEngagement - DUST) {
    const enters = entryOnLastRing < 0 ? `the last ring stands ${inMillimetres(0 - entryOnLastRing)} out of the box` : null
    const reason =
      enters ?? `the follower would enter by only ${inMillimetres(entryOnLastRing)}, less than ${inMillimetres(leastEngagement)}`
    return { verdict: 'one ring too many', entry: entryOnLastRing, reason }
  }
  if (entryOnAnother >= followerEntry - DUST) {
    const reason = `over another ring the follower would still enter by ${inMillimetres(entryOnAnother)}`
    return { verdict: 'one more ring', entry: entryOnAnother, reason }
  }
  const reason = `the follower enters by ${inMillimetres(entryOnLastRing)}, and over another ring not by ${inMillimetres(followerEntry)}`
  return { verdict: 'good', entry: entryOnLastRing, reason }
}
