import type { Objective, PlanTotals, RepackPlan, RepackSlot } from '@glandkeeper/contract/repack-plans'
import { counted, formatCount } from '../../ui/count.ts'

/** A share in percent with the decimals it needs. @example percentInWords(0.0023) // → '0.2 %' */
export function percentInWords(share: number): string {
  const percent = share * 100
  return `${percent >= 10 ? formatCount(Math.round(percent)) : percent.toFixed(1)}\u00a0%`
}

/** @example expectedInWords(2.345) // → '2.3' */
export function expectedInWords(expected: number): string {
  return expected >= 100 ? formatCount(Math.round(expected)) : expected.toFixed(1)
}

/** Money of the site in whole figures; points, which are of use beside other points only, with two decimals. */
export function costInWords(cost: number, objective: Objective): string {
  if (objective === 'money') return formatCount(Math.round(cost))
  return `${cost.toFixed(2)}\u00a0${cost.toFixed(2) === '1.00' ? 'point' : 'points'}`
}

export const objectiveInWords: Readonly<Record<Objective, string>> = {
  chance: 'the chance of running out',
  money: 'what it costs in money',
}

export const costNote: Readonly<Record<Objective, string>> = {
  chance: 'A point: one valve of low criticality that runs out for certain.',
  money: 'Costs are in the money of the site, by the prices in its settings.',
}

/** How many are where. @example placesInWords({ totals, slots }) // → '61 valves to repack: 34 in outages, 21 while the plant runs, 6 wait.' */
export function placesInWords({ totals, slots }: Pick<RepackPlan, 'totals' | 'slots'>): string {
  if (totals.valves === 0) return 'No valve is likely enough to run out of travel within this plan to need a repack.'
  const places = [
    `${many(repacksIn(slots, 'outage'))} in outages`,
    `${many(repacksIn(slots, 'fortnight'))} while the plant runs`,
    `${many(totals.waits)} ${totals.waits === 1 || totals.waits === 0 ? 'waits' : 'wait'}`,
  ]
  return `${counted(totals.valves, 'valve')} to repack: ${places.join(', ')}.`
}

const many = (count: number) => (count === 0 ? 'none' : formatCount(count))

function repacksIn(slots: readonly RepackSlot[], kind: RepackSlot['kind']): number {
  return slots.filter((slot) => slot.kind === kind).reduce((sum, { repacks }) => sum + repacks, 0)
}

export function expectedOfPlanInWords({ expectedOut, expectedLeaks }: PlanTotals): string {
  return `Before their repack ${expectedInWords(expectedOut)} of them are to be expected to run out of travel, and ${expectedInWords(expectedLeaks)} leaks.`
}

/** How far it may be from the best there is, and what it saves against the plain way. */
export function qualityInWords({
  gap,
  greedyCost,
  totals,
  isCutShort,
}: Pick<RepackPlan, 'gap' | 'greedyCost' | 'totals' | 'isCutShort'>): string {
  const least = gap < 0.0005 ? 'No plan of these costs less' : `At most ${percentInWords(gap)} above the least that is possible`
  const more = totals.cost.total > 0 ? greedyCost / totals.cost.total - 1 : 0
  const plain =
    more < 0.0005 ? 'one after the other costs the same' : `one after the other it would cost ${percentInWords(more)} more`
  return `${least}; ${plain}.${isCutShort ? ' The search was ended by its time limit.' : ''}`
}

/** A difference with its sign, empty where there is none that shows. @example differenceInWords(-1.44) // → '−1.4' */
export function differenceInWords(difference: number, decimals: number): string {
  const figure = Math.abs(difference).toLocaleString('en-GB', {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  })
  if (Number(figure.replaceAll(',', '')) === 0) return ''
  return `${difference < 0 ? '−' : '+'}${figure}`
}
