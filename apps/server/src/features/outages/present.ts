import type { Outage } from '@glandkeeper/contract/outages'
import type { OutageModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'
import { repackPlanInUse, slotOfOutage, tradeHours } from '../repack-plans/index.ts'

/** Outages of the site, the next first, with the repacks that the plan in use has in each. */
export async function presentOutages(read: Read, siteId: string, rows: readonly OutageModel[]): Promise<Outage[]> {
  const plan = await repackPlanInUse(read, siteId)
  const counts = plan
    ? await read.plannedRepack.groupBy({ by: ['slotId'], where: { planId: plan.id }, _count: { _all: true } })
    : []
  const repacks = new Map(counts.map(({ slotId, _count }) => [slotId, _count._all]))
  return rows.map((row) => ({
    outageId: row.id,
    name: row.name,
    earliestOn: row.earliestOn,
    likelyOn: row.likelyOn,
    latestOn: row.latestOn,
    days: row.days,
    hours: tradeHours(row),
    areaCodes: JSON.parse(row.areaCodes) as string[],
    state: row.state as Outage['state'],
    startedOn: row.startedOn,
    endedOn: row.endedOn,
    revision: row.revision,
    repacks: repacks.get(slotOfOutage(row.id)) ?? 0,
  }))
}
