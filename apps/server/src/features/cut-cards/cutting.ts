import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Gland } from '@glandkeeper/contract/glands'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { advisedRings, ringsForBox, spacerForRings } from '@glandkeeper/engines/gland/box-space'
import { fitSection, type SectionFit } from '@glandkeeper/engines/gland/fitted-section'
import { jointPositions } from '@glandkeeper/engines/gland/joints'
import { ringLength, wrapsOnMandrel } from '@glandkeeper/engines/gland/ring-length'
import type { Outcome } from '@glandkeeper/engines/outcome'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import type { Millimetre } from '@glandkeeper/units/quantity'

export interface ToCut {
  readonly gland: Gland
  readonly family: SiteFamily | null
  readonly lastRings: number | null
  readonly rules: SettingValues
}

type Cutting = Pick<CutCard, 'cord' | 'rings' | 'cut' | 'joints' | 'jointNotes' | 'cutNotes'>
/** What an engine would not compute, in its own words. */
export type Refused = (outcome: Outcome<object>) => void

/** What to take from the store, how many rings, how long, and where their joints go. */
export function cuttingOf(valve: ToCut, refused: Refused): Cutting {
  const cord = cordOf(valve, refused)
  const rings = cord && ringsOf(valve, cord.space, refused)
  const count = rings?.count ?? null
  const cut = cord && valve.family?.form !== 'die-formed' ? cutOf(valve, cord.space, count, refused) : null
  return { cord, rings, cut, cutNotes: cutNotesOf(valve, cut), ...jointsOf(count, valve.rules, refused) }
}

function cordOf({ gland: { boxBore, stemDiameter }, family, rules }: ToCut, refused: Refused): CutCard['cord'] {
  if (boxBore === null || stemDiameter === null) return null
  const fit = fitSection({ boxBore, stemDiameter, rollDownLimit: rules.rollDownLimit })
  if (!fit.ok) {
    refused(fit)
    return null
  }
  const { space, recommended } = fit
  if (family?.form === 'die-formed') {
    const says = `pressed for a stem of ${millimetres(stemDiameter)} in a bore of ${millimetres(boxBore)}, ${millimetres(space)} wide`
    return { space, designation: null, size: null, rollTo: null, says }
  }
  return {
    space,
    designation: recommended?.section.designation ?? null,
    size: recommended?.section.size ?? null,
    rollTo: recommended?.rollTo ?? null,
    says: recommended ? fitInWords(recommended, space) : nothingFits(space, [fit.metric, fit.inch]),
  }
}

function fitInWords({ section, verdict, rollTo }: SectionFit, space: Millimetre): string {
  if (verdict === 'fits') return `${section.designation} cord fits the space of ${millimetres(space)} as it is`
  return `${section.designation} cord, rolled down to ${millimetres(rollTo ?? space)} on a bench with a bar, never hammered`
}

function nothingFits(space: Millimetre, nearest: readonly (SectionFit | null)[]): string {
  const named = nearest.flatMap((fit) => (fit === null ? [] : [`${fit.section.designation} ${missing(fit)}`]))
  return `no listed cord fits ${millimetres(space)} or rolls down to it (${named.join(', ')}): ask before cutting`
}

function missing({ verdict, gapPerSide, over }: SectionFit): string {
  return verdict === 'too small' ? `leaves ${millimetres(gapPerSide)} on each side` : `is ${millimetres(over)} too thick`
}

function ringsOf({ gland, family, lastRings }: ToCut, section: Millimetre, refused: Refused): CutCard['rings'] {
  const { boxDepth, noseLength, leastEngagement } = gland
  if (boxDepth === null || noseLength === null || family === null) return null
  const box = { boxDepth, section, noseLength, leastEngagement, consolidation: family.figures.consolidation.value }
  const found = ringsForBox(box)
  if (!found.ok) {
    refused(found)
    return null
  }
  const { rings, advice } = found
  const { least, most } = advisedRings
  const spacer = advice === 'more than advised' ? spacerForRings({ ...box, wantedRings: most }) : null
  return {
    count: rings,
    says: [
      'Counted for a box without bottom bush, lantern ring or spacer: the register has none. Count what comes out.',
      ...(family.form === 'die-formed'
        ? ['Counted for rings as high as they are wide: with another height it is another number.']
        : []),
      ...(lastRings !== null && lastRings !== rings
        ? [`${lastRings} went in last time: ask why before it is another number.`]
        : []),
      ...(spacer?.ok
        ? [`Advice is ${least} to ${most} rings: ${most} with a rigid spacer of ${millimetres(spacer.spacer)}. Ask the engineer.`]
        : []),
      ...(advice === 'fewer than advised' ? [`Advice is ${least} to ${most} rings: this box takes fewer.`] : []),
    ],
  }
}

function cutOf(
  { gland: { stemDiameter }, rules: { skiveAngle } }: ToCut,
  section: Millimetre,
  count: number | null,
  refused: Refused,
): CutCard['cut'] {
  if (stemDiameter === null) return null
  const ring = ringLength({ stemDiameter, section, cutAngle: skiveAngle })
  if (!ring.ok) {
    refused(ring)
    return null
  }
  const wound = count === null ? null : wrapsOnMandrel(count)
  return { angle: skiveAngle, length: ring.edgeLength, mandrel: stemDiameter, wraps: wound?.ok ? wound.wraps : null }
}

function cutNotesOf({ family }: ToCut, cut: CutCard['cut']): string[] {
  if (family?.form === 'die-formed')
    return ['Pressed rings come to size: nothing is cut from cord. Joints are staggered where the rings are split.']
  if (cut === null) return []
  return [
    'Both ends are cut the same way, so each long edge measures the length too.',
    'Wind the cord on a bar of stem size and cut the rings from it; the first and the last wrap are never whole.',
    'Lay the first ring round the bar: it closes fully, without a gap. Never take an old ring for a pattern.',
  ]
}

function jointsOf(
  count: number | null,
  { jointStagger: stagger }: SettingValues,
  refused: Refused,
): Pick<CutCard, 'joints' | 'jointNotes'> {
  if (count === null) return { joints: [], jointNotes: [] }
  const found = jointPositions({ rings: count, stagger })
  if (!found.ok) {
    refused(found)
    return { joints: [], jointNotes: [] }
  }
  return {
    joints: found.joints.map(({ ring, angle, clock }) => ({ ring, angle, clock })),
    jointNotes: [
      `Ring 1 goes in first, joint at 12; each next one ${stagger}° on.`,
      ...found.findings.map(({ detail }) => `Mind: ${detail}.`),
    ],
  }
}
