import { type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { reserveRules } from '../reserve/findings.ts'
import { leastGapOf } from '../reserve/reserve.ts'
import { DUST, firstNotLength, firstNotLengthOrNought, firstNotShare, inMillimetres } from './dimensions.ts'

export type LoadingVerdict = 'good' | 'one more ring may fit' | 'rings stand too high' | 'tilted' | 'follower on the box'

/** Share of the consolidated set height by which the gap may be off. Set by us. */
export const LOADING_TOLERANCE = ratio(0.05)

/**
 * Whether a set is loaded as expected, from the gaps measured after loading.
 *
 *     gap        = mean of the two sides, or the one side read        mm
 *     difference = gap - expected gap, allowed within tolerance · set height
 *
 * A follower that stands on the box comes before all: it presses nothing. Then tilted: of a follower that sits askew the gap says little; slacken, level and read again. A short gap
 * means the packing sits low: a ring fewer, or a set pressed harder than expected. A wide one means rings that are not
 * seated, or one too many. Which of the two, only the count of rings and the torque tell.
 *
 * @source SRC-117 expected gap · SRC-120 tolerance and tilt, set by us (docs/sources.md)
 * @returns the verdict with the figures behind it; `loading/no-gap` where neither side was read
 * @example loadingVerdict({ gapLeft: mm(8), gapRight: mm(8.4), expectedGap: mm(8), setHeight: mm(36) }).verdict // → 'good'
 */
export function loadingVerdict(input: {
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
  readonly expectedGap: Millimetre
  readonly setHeight: Millimetre
  readonly tolerance?: Ratio
  readonly tiltLimit?: Millimetre
}): Outcome<{
  verdict: LoadingVerdict
  gap: Millimetre
  difference: Millimetre
  allowed: Millimetre
  tilt: Millimetre | null
  reason: string
}> {
  const { gapLeft, gapRight, expectedGap, setHeight } = input
  const { tolerance = LOADING_TOLERANCE, tiltLimit = mm(reserveRules.tilt) } = input
  if (leastGapOf(gapLeft, gapRight) === null) return refuse('loading/no-gap', 'gapLeft', 'no gap was measured on either side')
  const left = gapLeft ?? gapRight ?? 0
  const right = gapRight ?? left
  const fault =
    firstNotLengthOrNought({ [gapLeft === null ? 'gapRight' : 'gapLeft']: left }) ??
    firstNotLengthOrNought({ gapRight: right, expectedGap, tiltLimit }) ??
    firstNotLength({ setHeight }) ??
    firstNotShare({ tolerance })
  if (fault) return fault
  const gap = mm((left + right) / 2)
  const difference = mm(gap - expectedGap)
  const allowed = mm(tolerance * setHeight)
  const tilt = gapLeft === null || gapRight === null ? null : mm(Math.abs(left - right))
  // Metal on metal: the nuts load the box and not the packing, however well the gap agrees.
  const stands = Math.min(left, right) <= DUST
  const verdict = stands
    ? {
        verdict: 'follower on the box' as const,
        reason: 'the flange stands on the box face: the nuts no longer load the packing',
      }
    : verdictOf({ difference, allowed, tilt, tiltLimit })
  return { ok: true, ...verdict, gap, difference, allowed, tilt }
}

function verdictOf(figures: {
  readonly difference: Millimetre
  readonly allowed: Millimetre
  readonly tilt: Millimetre | null
  readonly tiltLimit: Millimetre
}): { verdict: LoadingVerdict; reason: string } {
  const { difference, allowed, tilt, tiltLimit } = figures
  if (tilt !== null && tilt > tiltLimit + DUST) {
    return { verdict: 'tilted', reason: `the two gaps differ by ${inMillimetres(tilt)}, more than ${inMillimetres(tiltLimit)}` }
  }
  if (difference + allowed < 0 - DUST) {
    const reason = `the gap is ${inMillimetres(0 - difference)} shorter than expected, more than ${inMillimetres(allowed)}`
    return { verdict: 'one more ring may fit', reason }
  }
  if (difference > allowed + DUST) {
    const reason = `the gap is ${inMillimetres(difference)} wider than expected, more than ${inMillimetres(allowed)}`
    return { verdict: 'rings stand too high', reason }
  }
  return { verdict: 'good', reason: `the gap is within ${inMillimetres(allowed)} of what was expected` }
}
