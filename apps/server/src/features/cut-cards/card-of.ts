import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { SettingValues } from '@glandkeeper/contract/settings'
import type { ValveInput } from '@glandkeeper/contract/valves'
import { formatFigure } from '@glandkeeper/units/figure'
import { nameInWords } from '@glandkeeper/units/format'
import { dayAt } from '../../platform/clock.ts'
import { cuttingOf, type Refused } from './cutting.ts'
import { cautions, hazardsOf, proof } from './hazards.ts'
import { loadingOf } from './loading.ts'
import { nutsOf } from './nuts.ts'
import { openOf } from './open.ts'

export interface ForCard {
  readonly valve: ValveInput & { readonly areaName: string }
  /** As it was written down at the last repack; null when nobody did. */
  readonly familyName: string | null
  readonly family: SiteFamily | null
  readonly lastRings: number | null
  readonly rules: SettingValues
  readonly now: Date
  readonly timeZone: string
}

/** All that a card says, worked out of what is known of the valve; the rest is left open. */
export function cardOf({ valve, familyName, family, lastRings, rules, now, timeZone }: ForCard): CutCard {
  const open = openOf(valve, family)
  const refused: Refused = (outcome) => {
    if (!outcome.ok) open.push({ what: nameInWords(outcome.problem.field), says: outcome.problem.detail })
  }
  const { gland, pressure } = valve
  const cutting = cuttingOf({ gland, family, lastRings, rules }, refused)
  const section = cutting.cord?.space ?? null
  const rings = cutting.rings?.count ?? null
  const days = rules.retightenAfterRepack
  return {
    tag: valve.tag,
    description: valve.description,
    areaName: valve.areaName,
    service: valve.service,
    fluid: valve.fluid,
    phase: valve.phase,
    temperature: valve.temperature,
    pressure,
    madeOn: dayAt(now, timeZone),
    family: familyName,
    form: family?.form ?? null,
    gland,
    ...cutting,
    ...loadingOf({ gland, pressure, family, section, rings, rules }, refused),
    ...nutsOf(gland.studThread),
    proof: [...proof],
    followUp: [
      `After ${days} ${days === 1 ? 'day' : 'days'} in normal service: isolated again, unless the site procedure allows it ` +
        'in service, nuts to the last torque once more, both gaps and the leak written down.',
    ],
    hazards: hazardsOf(valve, family),
    cautions: [...cautions],
    open,
    basis: basisOf(family),
  }
}

/** The two figures of a family that a card leans on most, and whose word each is. */
function basisOf(family: SiteFamily | null): string {
  const ours = 'Ring count, gap and torque are expected figures, from settings marked as common practice'
  if (family === null) return `${ours}.`
  const { consolidation, stressFloor } = family.figures
  const word = (confirmed: { by: string } | null) =>
    confirmed ? `confirmed by ${confirmed.by}` : 'nobody of this site has confirmed it'
  return (
    `${ours}. Of ${family.name}: consolidation ${formatFigure(consolidation.value * 100, '%', 1)}, ${word(consolidation.confirmed)}; ` +
    `least gland stress ${formatFigure(stressFloor.value, 'MPa', 1)}, ${word(stressFloor.confirmed)}.`
  )
}
