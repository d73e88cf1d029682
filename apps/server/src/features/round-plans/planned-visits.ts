import type { QueryOf } from '@glandkeeper/contract/endpoint'
import type { listVisits, PlannedVisit } from '@glandkeeper/contract/round-plans'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { planInUse } from './plan-in-use.ts'
import { mondayAfter, weekIndexOf } from './weeks.ts'

const MOST_VISITS = 2_000

/** Visits of a plan with the week of each and why, the earliest first. */
export async function plannedVisits(
  read: Read,
  siteId: string,
  { planId, week, areaCode, crewId, tag }: QueryOf<typeof listVisits>,
): Promise<PlannedVisit[]> {
  const plan =
    planId === undefined ? await planInUse(read, siteId) : await read.roundPlan.findFirst({ where: { id: planId, siteId } })
  if (!plan) {
    if (planId !== undefined) throw new Refusal('plan/unknown', planId)
    return []
  }
  const rows = await read.plannedVisit.findMany({
    where: {
      planId: plan.id,
      ...(week !== undefined && { week }),
      ...(crewId !== undefined && { crewId }),
      valve: { ...(areaCode !== undefined && { area: { code: areaCode } }), ...(tag !== undefined && { tag }) },
    },
    orderBy: [{ week: 'asc' }, { dueWeek: 'asc' }, { valve: { level: 'asc' } }, { valve: { walkPosition: 'asc' } }],
    take: MOST_VISITS,
    include: {
      crew: { select: { name: true } },
      valve: { select: { id: true, tag: true, description: true, area: { select: { code: true } } } },
    },
  })
  const pins = await read.visitPin.findMany({
    where: { siteId, valveId: { in: [...new Set(rows.map(({ valveId }) => valveId))] } },
    include: { person: { select: { name: true } } },
  })
  const missed = await whyMissed(
    read,
    siteId,
    rows.filter(({ cause }) => cause === 'missed on a round').map(({ valveId }) => valveId),
  )
  const monday = (index: number) => mondayAfter(plan.startsOn, index)
  return rows.map((row) => {
    const pin = pins.find((one) => one.valveId === row.valveId && weekIndexOf(one.weekOf, plan.startsOn) === row.week)
    return {
      tag: row.valve.tag,
      description: row.valve.description,
      areaCode: row.valve.area.code,
      crewName: row.crew?.name ?? null,
      weekOf: row.week === null ? null : monday(row.week),
      dueWeekOf: monday(row.dueWeek),
      earliest: monday(row.earliest),
      latest: monday(row.latest),
      minutes: row.minutes as PlannedVisit['minutes'],
      cause: row.cause as PlannedVisit['cause'],
      missed: row.cause === 'missed on a round' ? (missed.get(row.valveId) ?? null) : null,
      reason: row.reason as PlannedVisit['reason'],
      isPinned: pin !== undefined,
      pinnedBy: pin?.person.name ?? null,
    }
  })
}

/** The last word of a fitter on why a valve could not be done, by valve. */
async function whyMissed(read: Read, siteId: string, valveIds: readonly string[]): Promise<Map<string, PlannedVisit['missed']>> {
  if (valveIds.length === 0) return new Map()
  const entries = await read.event.findMany({
    where: { siteId, kind: 'visit.missed', valveId: { in: [...new Set(valveIds)] } },
    orderBy: { takenAt: 'asc' },
    select: { valveId: true, body: true },
  })
  return new Map(entries.map(({ valveId, body }) => [valveId, (JSON.parse(body) as { reason: PlannedVisit['missed'] }).reason]))
}
