import { type Millimetre, mm } from '@glandkeeper/units/quantity'
import type { Outcome } from '../outcome.ts'
import { DUST, firstNotLength, firstNotLengthOrNought } from './dimensions.ts'

/**
 * Whether one more ring goes in over a loaded set, from the gap that was read.
 *
 *     in the box        = nose - gap                 mm, depth from the face down to the loaded packing
 *     over another ring = nose - gap - section       mm, that ring still loose
 *
 * It fits where the nose then still enters by the least engagement. Below 0 the ring would stand out of the box. It
 * knows nothing of a nose that does not reach the packing, nor of thread left on the studs.
 *
 * @source SRC-117 heights and gap · SRC-118 one by one (docs/sources.md)
 * @returns the nose in the box now and over another ring, or the figure at fault
 * @example anotherRing({ noseLength: mm(20), gap: mm(4), section: mm(8), leastEngagement: mm(3.2) }).entryOverAnother // → 8
 * @example anotherRing({ noseLength: mm(20), gap: mm(9), section: mm(8), leastEngagement: mm(3.2) }).fits // → false
 */
export function anotherRing(input: {
  readonly noseLength: Millimetre
  /** The wider of the two sides, so that neither stands out. */
  readonly gap: Millimetre
  readonly section: Millimetre
  readonly leastEngagement: Millimetre
}): Outcome<{ fits: boolean; noseInBox: Millimetre; entryOverAnother: Millimetre }> {
  const { noseLength, gap, section, leastEngagement } = input
  const fault = firstNotLength({ noseLength, section }) ?? firstNotLengthOrNought({ gap, leastEngagement })
  if (fault) return fault
  const noseInBox = mm(noseLength - gap)
  const entryOverAnother = mm(noseInBox - section)
  return { ok: true, fits: entryOverAnother >= leastEngagement - DUST, noseInBox, entryOverAnother }
}
