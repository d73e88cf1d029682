import { type Degree, degrees, type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { firstNotCount, firstNotLength, inMillimetres } from './dimensions.ts'

/** Straight across the cord. */
export const BUTT_CUT = degrees(90)
/** What a one-inch pump section is cut longer for bevelled ends: a quarter of an inch. Not scaled to other sections. */
export const BEVEL_ALLOWANCE = mm(6.35)

const MOST_ALLOWANCE = 1000

export interface RingInput {
  readonly stemDiameter: Millimetre
  readonly section: Millimetre
  /** Between the cut and the axis of the cord, above 0 and up to 90: 90 is a butt cut, 45 and 30 are skives. */
  readonly cutAngle?: Degree
  /** Cut longer by this, or shorter where a gap is wanted (negative); 0 unless said. */
  readonly allowance?: Millimetre
}

export interface RingFigures {
  /** Round the middle of the section. */
  readonly midLength: Millimetre
  /** What each long edge of the piece measures, and what the cut marks are apart: mid length and allowance. */
  readonly edgeLength: Millimetre
  /** How far the cut leans along the cord; 0 for a butt. */
  readonly cutOffset: Millimetre
  /** Along the axis from far point to far point. */
  readonly overallLength: Millimetre
  /** Part of the piece that has its whole section: between the two inner corners. */
  readonly wholeSectionLength: Millimetre
  readonly innerCircumference: Millimetre
  readonly outerCircumference: Millimetre
  /** Share by which the outer side of the cord is stretched and the inner side pressed together when bent. */
  readonly bendingStrain: Ratio
}

/**
 * Lengths to cut one ring to, butt or skive.
 *
 *     mid length     = π · (stem + section)                      mm
 *     edge length    = mid length + allowance
 *     cut offset     = section / tan(angle)
 *     overall        = edge length + cut offset
 *     whole section  = edge length - cut offset
 *     bending strain = section / (stem + section)
 *
 * Both ends are cut parallel, so the piece is a parallelogram: mind that each long edge measures the edge length,
 * not the overall length, and that marks on one edge are the edge length apart. Cut to the overall length along an
 * edge the ring is too long by the offset. Holds for cord bent without change of its middle; the sources disagree
 * whether a gap is left (pumps) or the ring closes fully (valves), so the allowance is yours.
 *
 * @source SRC-102 length at mid-width · SRC-110 skive and strain · SRC-111 allowance for bevels (docs/sources.md)
 * @returns the lengths, or the input at fault; a cut so flat that its ends meet is refused
 * @example ringLength({ stemDiameter: mm(28), section: mm(8) }).midLength // → 36 * Math.PI
 * @example ringLength({ stemDiameter: mm(28), section: mm(8), cutAngle: degrees(45) }).cutOffset // → 8
 */
export function ringLength(input: RingInput): Outcome<RingFigures> {
  const { stemDiameter, section, cutAngle = BUTT_CUT, allowance = mm(0) } = input
  const fault = firstNotLength({ stemDiameter, section })
  if (fault) return fault
  if (!(cutAngle > 0 && cutAngle <= 90)) {
    return refuse('ring/angle-out-of-range', 'cutAngle', `the cut must be above 0 and up to 90 degrees, not ${cutAngle}`)
  }
  if (!(Math.abs(allowance) <= MOST_ALLOWANCE)) {
    return refuse(
      'number/out-of-range',
      'allowance',
      `the allowance must be within ${MOST_ALLOWANCE} mm either way, not ${allowance}`,
    )
  }
  const midDiameter = stemDiameter + section
  const midLength = Math.PI * midDiameter
  const edgeLength = midLength + allowance
  if (!(edgeLength > 0)) {
    const detail = `${inMillimetres(0 - allowance)} shorter than ${inMillimetres(midLength)} leaves no ring`
    return refuse('ring/no-length-left', 'allowance', detail)
  }
  const cutOffset = cutAngle === 90 ? 0 : section / Math.tan((cutAngle / 180) * Math.PI)
  if (!(cutOffset < edgeLength)) {
    const detail = `at ${cutAngle} degrees the cut is longer than the ring of ${inMillimetres(edgeLength)}`
    return refuse('ring/cut-longer-than-ring', 'cutAngle', detail)
  }
  return {
    ok: true,
    midLength: mm(midLength),
    edgeLength: mm(edgeLength),
    cutOffset: mm(cutOffset),
    overallLength: mm(edgeLength + cutOffset),
    wholeSectionLength: mm(edgeLength - cutOffset),
    innerCircumference: mm(Math.PI * stemDiameter),
    outerCircumference: mm(Math.PI * (stemDiameter + 2 * section)),
    bendingStrain: ratio(section / midDiameter),
  }
}

/**
 * Wraps of cord to wind on a mandrel of stem size, to cut so many rings in one line: one more than rings.
 * The first and last wrap are never whole.
 *
 * @source SRC-112 common practice (docs/sources.md)
 * @example wrapsOnMandrel(5) // → { ok: true, wraps: 6 }
 */
export function wrapsOnMandrel(rings: number): Outcome<{ wraps: number }> {
  return firstNotCount({ rings }) ?? { ok: true, wraps: rings + 1 }
}
