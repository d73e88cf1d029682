import type { Read } from '../../platform/store.ts'
import type { VisitBefore } from './before-and-pins.ts'
import { weekIndexOf } from './weeks.ts'

/** The plan in use: the one taken last. Null while the site has none. */
export function planInUse(read: Pick<Read, 'roundPlan'>, siteId: string) {
  return read.roundPlan.findFirst({
    where: { siteId, takenAt: { not: null } },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
  })
}

/** The draft that waits to be taken or thrown away. One that is still being written has no summary. */
export function draftOf(read: Pick<Read, 'roundPlan'>, siteId: string) {
  return read.roundPlan.findFirst({
    where: { siteId, takenAt: null, summary: { not: '' } },
    orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
  })
}

/** Visits of the plan in use by valve, in weeks from another Monday; those before it are left out. */
export async function readPlanInUse(
  read: Pick<Read, 'roundPlan' | 'plannedVisit'>,
  siteId: string,
  startsOn: string,
): Promise<{ planId: string | null; byValve: Map<string, VisitBefore[]> }> {
  const plan = await planInUse(read, siteId)
  const byValve = new Map<string, VisitBefore[]>()
  if (!plan) return { planId: null, byValve }
  const since = weekIndexOf(startsOn, plan.startsOn)
  const rows = await read.plannedVisit.findMany({
    where: { planId: plan.id, week: { gte: since } },
    orderBy: [{ valveId: 'asc' }, { number: 'asc' }],
    select: { valveId: true, week: true, crewId: true },
  })
  for (const { valveId, week, crewId } of rows) {
    if (week === null || crewId === null) continue
    const visits = byValve.get(valveId) ?? []
    visits.push({ week: week - since, crewId })
    byValve.set(valveId, visits)
  }
  return { planId: plan.id, byValve }
}
