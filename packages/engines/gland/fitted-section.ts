import { type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { DUST, firstNotLength, firstNotShare, inMillimetres } from './dimensions.ts'
import { type StandardSection, standardSections } from './standard-sections.ts'

/** How one section sits in one space. `roll down`: rolled thinner to the space with a bar on a bench, never hammered. */
export type FitVerdict = 'fits' | 'roll down' | 'too big' | 'too small'

export interface SectionFit {
  readonly section: StandardSection
  readonly verdict: FitVerdict
  /** Section less space: more than 0 is too thick. */
  readonly over: Millimetre
  /** What a section over the space must be rolled to, which is the space; null for any other verdict. */
  readonly rollTo: Millimetre | null
  /** Space a smaller section leaves on each side of the stem, and on both sides together; 0 where it leaves none. */
  readonly gapPerSide: Millimetre
  readonly gapInAll: Millimetre
}

/** Share of the section by which it may be rolled thinner. Set by us: rolling further breaks up the braid. */
export const ROLL_DOWN_LIMIT = ratio(0.05)
/** Share of the space a section may be off and still be called fitting. Set by us, less than cord varies by itself. */
export const FIT_TOLERANCE = ratio(0.02)

const rank: Readonly<Record<FitVerdict, number>> = { fits: 0, 'roll down': 1, 'too small': 2, 'too big': 2 }

/**
 * Which standard section goes into a box, in metric and in inch, and the one to take.
 *
 *     space     = (box bore - stem) / 2                 mm
 *     fits      : |section - space| <= tolerance · space
 *     roll down : section - space   <= limit · section, never hammered
 *
 * Holds for square cord and a stem in the middle of its box. A section that fits or rolls down is named before
 * a nearer one that does neither. It knows nothing of the cord's own tolerance: measure the cord.
 *
 * @source SRC-101 section · SRC-104 standard sections · SRC-106 rolling down · SRC-107 limits, set by us (docs/sources.md)
 * @returns the space, a fit for each system that is listed, and the recommended one, null where none fits or rolls down
 * @example fitSection({ boxBore: mm(45), stemDiameter: mm(29) }).recommended.section.designation // → '8 mm'
 * @example fitSection({ boxBore: mm(63), stemDiameter: mm(45) }).inch.gapInAll // → 0
 */
export function fitSection(input: {
  readonly boxBore: Millimetre
  readonly stemDiameter: Millimetre
  readonly rollDownLimit?: Ratio
  readonly fitTolerance?: Ratio
  readonly sections?: readonly StandardSection[]
}): Outcome<{ space: Millimetre; metric: SectionFit | null; inch: SectionFit | null; recommended: SectionFit | null }> {
  const { boxBore, stemDiameter, sections = standardSections } = input
  const { rollDownLimit = ROLL_DOWN_LIMIT, fitTolerance = FIT_TOLERANCE } = input
  const fault = firstNotLength({ boxBore, stemDiameter }) ?? firstNotShare({ rollDownLimit, fitTolerance })
  if (fault) return fault
  if (!(boxBore > stemDiameter)) {
    const detail = `the bore must be larger than the stem: ${inMillimetres(boxBore)} is not more than ${inMillimetres(stemDiameter)}`
    return refuse('gland/bore-not-larger-than-stem', 'boxBore', detail)
  }
  if (sections.length === 0) return refuse('section/none-listed', 'sections', 'there is no section in the list to choose from')
  const badSize = sections.map(({ size }) => firstNotLength({ sections: size })).find((problem) => problem !== null)
  if (badSize) return badSize
  const space = mm((boxBore - stemDiameter) / 2)
  const fits = sections.map((section) => fitOf(section, space, { rollDownLimit, fitTolerance })).toSorted(byFit)
  const best = fits[0] ?? null
  return {
    ok: true,
    space,
    metric: fits.find(({ section }) => section.system === 'metric') ?? null,
    inch: fits.find(({ section }) => section.system === 'inch') ?? null,
    recommended: best && rank[best.verdict] < rank['too big'] ? best : null,
  }
}

function fitOf(
  section: StandardSection,
  space: Millimetre,
  limits: { readonly rollDownLimit: Ratio; readonly fitTolerance: Ratio },
): SectionFit {
  const over = mm(section.size - space)
  const verdict = verdictOf(section.size, space, limits)
  const gapPerSide = mm(Math.max(0, space - section.size))
  return { section, verdict, over, rollTo: verdict === 'roll down' ? space : null, gapPerSide, gapInAll: mm(2 * gapPerSide) }
}

function verdictOf(
  size: Millimetre,
  space: Millimetre,
  { rollDownLimit, fitTolerance }: { readonly rollDownLimit: Ratio; readonly fitTolerance: Ratio },
): FitVerdict {
  if (Math.abs(size - space) <= fitTolerance * space + DUST) return 'fits'
  if (size < space) return 'too small'
  return size - space <= rollDownLimit * size + DUST ? 'roll down' : 'too big'
}

/** Best verdict first, then nearest; of two as near the thicker, which can be rolled, then as listed. */
function byFit(a: SectionFit, b: SectionFit): number {
  const nearer = Math.abs(a.over) - Math.abs(b.over)
  return rank[a.verdict] - rank[b.verdict] || (Math.abs(nearer) > DUST ? nearer : b.over - a.over)
}
