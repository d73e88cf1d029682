import type { PlanTotals, RepackPlan, RepackSlot, WhatIf } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { counted } from '../../ui/count.ts'
import { expectedInWords } from './plan-words.ts'
import { firstDayInWords, slotNamed } from './slot-words.ts'

/**
 * What a question changes, as the first half of a sentence.
 *
 * @example whatIfInWords({ slips: [], hoursShare: 1, cordLateDays: 30, oneMoreOutage: null }, []) // → 'If cord and parts come 30 days later'
 */
export function whatIfInWords({ slips, hoursShare, cordLateDays, oneMoreOutage }: WhatIf, slots: readonly RepackSlot[]): string {
  const parts = [
    ...slips.map(
      ({ outageId, weeks }) =>
        `${slotNamed(slots, `outage:${outageId}`)} begins ${counted(Math.abs(weeks), 'week')} ${weeks < 0 ? 'earlier' : 'later'}`,
    ),
    ...(hoursShare === 1 ? [] : [`${Math.round(hoursShare * 100)}\u00a0% of the hours are there`]),
    ...(cordLateDays === 0 ? [] : [`cord and parts come ${counted(cordLateDays, 'day')} later`]),
    ...(oneMoreOutage === null
      ? []
      : [`there is one more outage, ${oneMoreOutage.name}, from ${firstDayInWords(oneMoreOutage)}`]),
  ]
  return parts.length === 0 ? 'If nothing changes' : `If ${listed(parts)}`
}

/** @example listed(['a', 'b', 'c']) // → 'a, b, and c' */
function listed(parts: readonly string[]): string {
  if (parts.length < 3) return parts.join(' and ')
  return `${parts.slice(0, -1).join(', ')}, and ${parts.at(-1) ?? ''}`
}

/** What keeping a plan comes to beside planning anew; where it asks for more than there is, its figures cannot be had. */
export function keptInWords(
  { totals, overHours, short }: Pick<NonNullable<RepackPlan['ifKept']>, 'totals' | 'overHours' | 'short'>,
  anew: PlanTotals,
): string {
  const [kept, other] = [expectedInWords(totals.expectedOut), expectedInWords(anew.expectedOut)]
  const figures = `If the plan is kept, ${kept} valves are to be expected to run out of travel before their repack; planned anew, ${other}.`
  if (overHours.length > 0 || short.length > 0)
    return `${figures} Kept, it asks for hours or cord that are not there, as named below: planned anew is what can be done.`
  const saves = totals.cost.total > 0 ? 1 - anew.cost.total / totals.cost.total : 0
  return saves < 0.005 ? `${figures} Planning anew saves next to nothing.` : figures
}

/** Valves by their chance of running out if the plan is kept; those whose chance a new plan would change keep both figures. */
export function byChanceIfKept(repacks: readonly PlannedRepack[], most: number) {
  return repacks
    .flatMap(({ ifKept, ...repack }) => (ifKept ? [{ ...repack, ifKept }] : []))
    .toSorted((one, other) => other.ifKept.chanceOut - one.ifKept.chanceOut)
    .slice(0, most)
}
