import { type Millimetre, mm, type Ratio } from '@glandkeeper/units/quantity'
import { type InputProblem, type Outcome, refuse } from '../outcome.ts'
import { DUST, firstNotCount, firstNotLength, firstNotLengthOrNought, firstNotShare, inMillimetres } from './dimensions.ts'

/** A box, what stands in it beside the rings, and the follower that comes on top. */
export interface PackedBox {
  readonly boxDepth: Millimetre
  readonly section: Millimetre
  /** Share of its height a ring loses when seated; differs by family, so there is no default. */
  readonly consolidation: Ratio
  readonly noseLength: Millimetre
  /** Length of nose that must stay in the box to guide the follower. */
  readonly leastEngagement: Millimetre
  /** Nose wanted in the box when the last ring is still loose; the least engagement unless said. */
  readonly followerEntry?: Millimetre
  readonly bottomBush?: Millimetre
  readonly lanternRing?: Millimetre
  readonly spacer?: Millimetre
}

/** Present advice on the number of rings; a rigid spacer fills the rest of a deep box. Common practice, editable. */
export const advisedRings = { least: 4, most: 6 } as const

const MOST_RINGS = 10_000

/** A box whose figures have been looked at: what is left in it for the rings and the nose. */
export interface BoxSpace {
  readonly available: number
  readonly seatedHeight: number
  readonly followerEntry: number
}

/**
 * How many rings a box takes.
 *
 *     available = depth - bottom bush - lantern ring - spacer          mm
 *     usable    = available - follower entry                           mm
 *     loose     = floor(usable / section)                              all rings in before any is pressed
 *     seated    = 1 + floor((usable - section) / (section · (1 - c)))  each ring seated before the next, c consolidation
 *
 * Rings are seated one by one, so `rings` is the seated count: the last one in is the only one still loose. `advice`
 * compares it with 4 to 6, or what you say. It knows nothing of a ring that springs back.
 *
 * @source SRC-117 rings from depth · SRC-118 one by one · SRC-119 4 to 6 rings, common practice (docs/sources.md)
 * @returns counts of at least 1, or `ring-set/no-ring-fits`
 * @example ringsForBox({ boxDepth: mm(80), section: mm(10), consolidation: ratio(0.3), noseLength: mm(30), leastEngagement: mm(5) }).looseRings // → 7
 */
export function ringsForBox(box: PackedBox & { readonly advised?: { readonly least: number; readonly most: number } }): Outcome<{
  available: Millimetre
  usable: Millimetre
  looseRings: number
  rings: number
  advice: 'as advised' | 'more than advised' | 'fewer than advised'
}> {
  const { section, advised = advisedRings } = box
  const space = spaceIn(box)
  if (!space.ok) return space
  const fault = firstNotCount({ 'advised.least': advised.least, 'advised.most': advised.most })
  if (fault) return fault
  const { available, seatedHeight, followerEntry } = space
  const usable = available - followerEntry
  const rings = 1 + Math.floor((usable - section + DUST) / seatedHeight)
  if (rings > MOST_RINGS) {
    return refuse('number/out-of-range', 'section', `${rings} rings of ${inMillimetres(section)} are more than any box holds`)
  }
  return {
    ok: true,
    available: mm(available),
    usable: mm(usable),
    looseRings: Math.floor((usable + DUST) / section),
    rings,
    advice: rings < advised.least ? 'fewer than advised' : rings > advised.most ? 'more than advised' : 'as advised',
  }
}

/**
 * Rigid spacer that brings a deep box down to a wanted number of rings, a spacer that is in it already included.
 *
 *     spacer = depth - bottom bush - lantern ring - entry - section - (rings - 1) · section · (1 - c)     mm
 *
 * With it the follower starts on the last loose ring by just the wanted entry, which leaves the longest travel.
 *
 * @source SRC-117 rings from depth · SRC-119 spacer in a deep box, common practice (docs/sources.md)
 * @returns length in all, and how much more than the spacer in place (negative: less); `ring-set/box-too-shallow` where
 *   the rings do not fit
 * @example spacerForRings({ boxDepth: mm(80), section: mm(10), consolidation: ratio(0.3), noseLength: mm(30), leastEngagement: mm(5), wantedRings: 5 }).spacer // → 37
 */
export function spacerForRings(
  box: PackedBox & { readonly wantedRings: number },
): Outcome<{ spacer: Millimetre; more: Millimetre }> {
  const { section, wantedRings, spacer: inPlace = mm(0) } = box
  const fault = firstNotCount({ wantedRings })
  if (fault) return fault
  const space = spaceIn(box)
  if (!space.ok) return space
  const { available, seatedHeight, followerEntry } = space
  const more = available - followerEntry - section - (wantedRings - 1) * seatedHeight
  const spacer = inPlace + more
  if (spacer < -DUST) {
    const detail = `the box is ${inMillimetres(-spacer)} too shallow for ${wantedRings} rings`
    return refuse('ring-set/box-too-shallow', 'wantedRings', detail)
  }
  return { ok: true, spacer: mm(Math.max(0, spacer)), more: mm(more) }
}

/**
 * What is left for rings and nose, once the figures of the box agree with each other.
 *
 * @returns the space, or the first figure at fault; a box that does not take a single ring is `ring-set/no-ring-fits`
 */
export function spaceIn(
  box: PackedBox,
): (BoxSpace & { readonly ok: true }) | { readonly ok: false; readonly problem: InputProblem } {
  const { boxDepth, section, consolidation, noseLength, leastEngagement, followerEntry = leastEngagement } = box
  const { bottomBush = mm(0), lanternRing = mm(0), spacer = mm(0) } = box
  const fault =
    firstNotLength({ boxDepth, section, noseLength }) ??
    firstNotLengthOrNought({ leastEngagement, followerEntry, bottomBush, lanternRing, spacer }) ??
    firstNotShare({ consolidation })
  if (fault) return fault
  if (!(noseLength > leastEngagement)) {
    const detail = `a nose of ${inMillimetres(noseLength)} cannot keep ${inMillimetres(leastEngagement)} in the box and travel`
    return refuse('gland/nose-shorter-than-engagement', 'noseLength', detail)
  }
  if (!(followerEntry >= leastEngagement && followerEntry <= noseLength)) {
    const detail = `the entry must lie between ${inMillimetres(leastEngagement)} and the nose of ${inMillimetres(noseLength)}`
    return refuse('ring-set/entry-out-of-range', 'followerEntry', detail)
  }
  const available = boxDepth - bottomBush - lanternRing - spacer
  if (!(available - followerEntry - section >= -DUST)) {
    const left = inMillimetres(Math.max(0, available - followerEntry))
    const detail = `no ring fits: ${left} of the box is left for rings of ${inMillimetres(section)}`
    return refuse('ring-set/no-ring-fits', 'boxDepth', detail)
  }
  return { ok: true, available, seatedHeight: section * (1 - consolidation), followerEntry }
}
