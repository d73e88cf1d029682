import type { Ratio } from '@glandkeeper/units/quantity'
import type { Caution } from './cautions.ts'
import type { FamilyFigures } from './families.ts'
import type { PhRange } from './fluids.ts'
import { type Phase, type Reason, said, shareUsed } from './reasons.ts'

export interface Fluid {
  readonly phase: Phase
  readonly ph: PhRange | null
  readonly isOxidising: boolean | null
}

interface FluidAndFamily extends Fluid {
  readonly family: { readonly figures: FamilyFigures; readonly cautions: readonly Caution[] }
}

/** What the fluid itself does to the packing. Steam is water, and a family that stands any pH needs none recorded. */
export function acidityReasons({ family, phase, ph, isOxidising }: FluidAndFamily): Reason[] {
  const reasons: Reason[] = phase === 'steam' ? [] : [phReason(family.figures, phase, ph)]
  if (!family.cautions.includes('oxidising fluids') || phase === 'steam') return reasons
  if (isOxidising === true)
    reasons.push({
      code: 'fluid/oxidising',
      standing: 'outside',
      used: null,
      detail: 'the fluid is strongly oxidising and attacks it',
    })
  if (isOxidising === null)
    reasons.push({
      code: 'fluid/may-be-oxidising',
      // Oxygen and chlorine are gases: what is not known of one never passes for harmless.
      standing: phase === 'gas' ? 'not known' : 'note',
      used: null,
      detail: 'it is attacked by strong oxidising fluids, and nothing is known of this one',
    })
  return reasons
}

function phReason({ lowestPh, highestPh }: FamilyFigures, phase: Phase, ph: PhRange | null): Reason {
  const range = `${said(lowestPh, 'pH')} to ${Number(highestPh.toFixed(1))}`
  const standsAll = lowestPh <= 0 && highestPh >= 14
  if (ph === null) {
    const standing = standsAll || phase === 'gas' ? 'note' : 'not known'
    const detail = standsAll ? 'it stands any pH' : `the pH is not recorded; it stands ${range}`
    return { code: 'acidity/not-known', standing, used: null, detail }
  }
  const fluid = ph.lowest === ph.highest ? said(ph.lowest, 'pH') : `${said(ph.lowest, 'pH')} to ${Number(ph.highest.toFixed(1))}`
  if (standsAll)
    return { code: 'acidity/within', standing: 'within', used: null, detail: `the fluid has ${fluid}; it stands any pH` }
  const used = Math.max(shareUsed(ph.lowest, lowestPh, highestPh), shareUsed(ph.highest, lowestPh, highestPh)) as Ratio
  if (ph.lowest < lowestPh || ph.highest > highestPh)
    return { code: 'acidity/outside', standing: 'outside', used, detail: `the fluid has ${fluid}, and it stands ${range}` }
  return { code: 'acidity/within', standing: 'within', used, detail: `the fluid has ${fluid}; it stands ${range}` }
}
