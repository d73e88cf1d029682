import { type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { DUST, firstNotCount, firstNotLength, firstNotShare, inMillimetres } from './dimensions.ts'

/** What several measurements of one diameter say, all in mm of diameter. */
export interface MeasuredDiameter {
  readonly mean: Millimetre
  readonly least: Millimetre
  readonly most: Millimetre
  /** Most less least; null from a single measurement, which shows none. */
  readonly ovality: Millimetre | null
  /** Worst place against the part as new; negative means larger metal than new: doubt a figure. Null: not known as new. */
  readonly wear: Millimetre | null
}

export type WornPartsWarning = {
  readonly code: 'worn/stem-oval' | 'worn/bore-oval' | 'worn/clearance-at-follower' | 'worn/clearance-at-neck'
  readonly measured: Millimetre
  readonly limit: Millimetre
  readonly detail: string
}

/** When wear calls for a word, as shares of the mean section. */
export interface WornPartsLimits {
  readonly ovality: Ratio
  /** Radial clearance packing may be pressed into. */
  readonly extrusion: Ratio
}

/** Settings of ours, not published values. */
export const wornPartsLimits: WornPartsLimits = { ovality: ratio(0.02), extrusion: ratio(0.05) }

interface WornParts {
  readonly stemDiameters: readonly Millimetre[]
  readonly boreDiameters: readonly Millimetre[]
  readonly stemAsNew?: Millimetre
  readonly boreAsNew?: Millimetre
  readonly followerBore?: Millimetre
  /** Bore of the neck or bush at the bottom of the box. */
  readonly neckBore?: Millimetre
  readonly limits?: WornPartsLimits
}

/**
 * What several diameters of stem and box say: means, ovality, wear, the section between them, and the
 * clearances that packing can be pressed into.
 *
 *     ovality   = most - least                       mm of diameter
 *     section   = (bore - stem) / 2                  of the means; least and most of the extremes, mm
 *     clearance = (hole - least stem) / 2            radial, where the stem is thinnest, mm
 *
 * Least and most section hold for a stem in the middle; a stem to one side makes them worse.
 *
 * @source SRC-101 section · SRC-108 geometry · SRC-109 limits, set by us (docs/sources.md)
 * @returns the figures and what stands out, or the measurement that cannot be
 * @example wornParts({ stemDiameters: [mm(28), mm(27.5)], boreDiameters: [mm(45), mm(45)] }).section.mean // → 8.625
 */
export function wornParts(input: WornParts): Outcome<{
  stem: MeasuredDiameter
  bore: MeasuredDiameter
  section: { readonly mean: Millimetre; readonly least: Millimetre; readonly most: Millimetre }
  clearanceAtFollower: Millimetre | null
  clearanceAtNeck: Millimetre | null
  warnings: readonly WornPartsWarning[]
}> {
  const fault = faultOf(input)
  if (fault) return fault
  const { stemDiameters, boreDiameters, stemAsNew, boreAsNew, followerBore, neckBore, limits = wornPartsLimits } = input
  const stem = measured(stemDiameters, (least) => (stemAsNew === undefined ? null : mm(stemAsNew - least)))
  const bore = measured(boreDiameters, (_, most) => (boreAsNew === undefined ? null : mm(most - boreAsNew)))
  const section = {
    mean: mm((bore.mean - stem.mean) / 2),
    least: mm((bore.least - stem.most) / 2),
    most: mm((bore.most - stem.least) / 2),
  }
  const clearance = (hole: Millimetre | undefined) => (hole === undefined ? null : mm((hole - stem.least) / 2))
  const clearanceAtFollower = clearance(followerBore)
  const clearanceAtNeck = clearance(neckBore)
  const ovalityLimit = mm(limits.ovality * section.mean)
  const extrusionLimit = mm(limits.extrusion * section.mean)
  const warnings = [
    ...over('worn/stem-oval', stem.ovality, ovalityLimit, 'ovality of the stem'),
    ...over('worn/bore-oval', bore.ovality, ovalityLimit, 'ovality of the box bore'),
    ...over('worn/clearance-at-follower', clearanceAtFollower, extrusionLimit, 'radial clearance in the follower'),
    ...over('worn/clearance-at-neck', clearanceAtNeck, extrusionLimit, 'radial clearance at the bottom of the box'),
  ]
  return { ok: true, stem, bore, section, clearanceAtFollower, clearanceAtNeck, warnings }
}

function faultOf(input: WornParts) {
  const { stemDiameters, boreDiameters, stemAsNew, boreAsNew, followerBore, neckBore, limits = wornPartsLimits } = input
  for (const [field, diameters] of Object.entries({ stemDiameters, boreDiameters })) {
    if (diameters.length === 0) return refuse('worn/nothing-measured', field, `${field} holds no measurement`)
    const tooMany = firstNotCount({ [field]: diameters.length })
    if (tooMany) return tooMany
    const fault = diameters.map((diameter) => firstNotLength({ [field]: diameter })).find((problem) => problem !== null)
    if (fault) return fault
  }
  const known = Object.entries({ stemAsNew, boreAsNew, followerBore, neckBore }).filter(([, value]) => value !== undefined)
  const fault =
    firstNotLength(Object.fromEntries(known) as Record<string, number>) ??
    firstNotShare({ 'limits.ovality': limits.ovality, 'limits.extrusion': limits.extrusion })
  if (fault) return fault
  const thickest = Math.max(...stemDiameters)
  const narrowest = Math.min(...boreDiameters)
  if (!(narrowest > thickest)) {
    const detail = `the narrowest bore, ${inMillimetres(narrowest)}, must be larger than the thickest stem, ${inMillimetres(thickest)}`
    return refuse('gland/bore-not-larger-than-stem', 'boreDiameters', detail)
  }
  for (const [field, hole] of Object.entries({ followerBore, neckBore })) {
    if (hole === undefined || hole >= thickest) continue
    return refuse(
      'worn/hole-smaller-than-stem',
      field,
      `a stem of ${inMillimetres(thickest)} does not pass ${inMillimetres(hole)}`,
    )
  }
  return null
}

function measured(
  diameters: readonly Millimetre[],
  wearOf: (least: Millimetre, most: Millimetre) => Millimetre | null,
): MeasuredDiameter {
  const least = mm(Math.min(...diameters))
  const most = mm(Math.max(...diameters))
  const sum = diameters.reduce<number>((total, diameter) => total + diameter, 0)
  // The mean of equal figures may miss them by binary dust; it never lies outside them.
  const mean = mm(Math.min(Math.max(sum / diameters.length, least), most))
  return { mean, least, most, ovality: diameters.length < 2 ? null : mm(most - least), wear: wearOf(least, most) }
}

function over(code: WornPartsWarning['code'], value: Millimetre | null, limit: Millimetre, what: string): WornPartsWarning[] {
  if (value === null || !(value > limit + DUST)) return []
  return [{ code, measured: value, limit, detail: `${what} is ${inMillimetres(value)}, more than ${inMillimetres(limit)}` }]
}
