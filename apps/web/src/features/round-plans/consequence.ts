import type { PlanBlock, RoundPlan } from '@glandkeeper/contract/round-plans'

/** What it means to move a block to another week, before it is moved. */
export interface Consequence {
  readonly visits: number
  /** Hours of the crew with it: where it was, and where it goes. */
  readonly leaves: { readonly load: number; readonly hours: number }
  readonly joins: { readonly load: number; readonly hours: number }
  /** Visits that would be made before the first, or after the last, week of their window. */
  readonly tooEarly: number
  readonly tooLate: number
  readonly isAreaClosed: boolean
  /** The area is open in that week anyway: its set-up is paid once. */
  readonly savesSetUp: boolean
}

/** Hours of a crew in a week: visits, and the set-up of each area that is open. */
export function loadOf(plan: RoundPlan, crewId: string, week: number): number {
  return plan.blocks
    .filter((block) => block.crewId === crewId && block.week === week)
    .reduce((sum, block) => sum + block.hours + setUpOf(plan, block.areaCode), 0)
}

export function setUpOf(plan: Pick<RoundPlan, 'areas'>, areaCode: string): number {
  return plan.areas.find((area) => area.areaCode === areaCode)?.setUpHours ?? 0
}

export function crewHours(plan: Pick<RoundPlan, 'crews'>, crewId: string, week: number): number {
  return plan.crews.find((crew) => crew.crewId === crewId)?.hours[week] ?? 0
}

export function consequenceOf(plan: RoundPlan, block: PlanBlock, to: number): Consequence {
  const { areaCode, crewId, week: from, hours, visits, windows } = block
  const setUp = setUpOf(plan, areaCode)
  const savesSetUp = plan.blocks.some((one) => one.week === to && one.crewId === crewId && one.areaCode === areaCode)
  const sumWhere = (is: (window: PlanBlock['windows'][number]) => boolean) =>
    windows.filter(is).reduce((sum, window) => sum + window.visits, 0)
  return {
    visits,
    leaves: { load: loadOf(plan, crewId, from) - hours - setUp, hours: crewHours(plan, crewId, from) },
    joins: { load: loadOf(plan, crewId, to) + hours + (savesSetUp ? 0 : setUp), hours: crewHours(plan, crewId, to) },
    tooEarly: sumWhere(({ earliest }) => to < earliest),
    tooLate: sumWhere(({ latest }) => to > latest),
    isAreaClosed: plan.areas.find((area) => area.areaCode === areaCode)?.closedWeeks.includes(to) ?? false,
    savesSetUp,
  }
}
