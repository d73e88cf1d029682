import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { Impossible, showPlans } from '@glandkeeper/contract/round-plans'
import type { RoundPlanModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'
import type { PlanSummary } from './make-round-plan.ts'
import { mondayAfter } from './weeks.ts'

type RoundPlan = NonNullable<OkIn<typeof showPlans>['taken']>
type PlanBlock = RoundPlan['blocks'][number]
/** As it was written: what the contract shows of it, and what a draft is judged by. */
type KeptSummary = Pick<RoundPlan, keyof RoundPlan & keyof PlanSummary> & Pick<PlanSummary, 'basedOn' | 'pins'>

const MOST_IMPOSSIBLE = 500

/** A plan as it is drawn: what each crew does in each area and week. */
export async function presentPlan(read: Read, plan: RoundPlanModel): Promise<RoundPlan> {
  const { basedOn: _, pins: __, ...summary } = JSON.parse(plan.summary) as KeptSummary
  const [people, areas, impossibleCount] = await Promise.all([
    read.person.findMany({
      where: { id: { in: [plan.madeById, plan.takenById ?? plan.madeById] } },
      select: { id: true, name: true },
    }),
    read.area.findMany({ where: { siteId: plan.siteId }, select: { id: true, code: true } }),
    read.plannedVisit.count({ where: { planId: plan.id, week: null } }),
  ])
  const nameOf = (id: string | null) => people.find((person) => person.id === id)?.name ?? ''
  const codes = new Map(areas.map(({ id, code }) => [id, code]))
  return {
    ...summary,
    planId: plan.id,
    startsOn: plan.startsOn,
    weeks: plan.weeks,
    madeAt: plan.madeAt.toISOString(),
    madeBy: nameOf(plan.madeById),
    takenAt: plan.takenAt?.toISOString() ?? null,
    takenBy: plan.takenById && nameOf(plan.takenById),
    blocks: await blocksOf(read, plan, codes),
    impossible: await impossibleOf(read, plan.id, codes),
    impossibleCount,
  }
}

async function blocksOf(read: Read, plan: RoundPlanModel, codes: ReadonlyMap<string, string>): Promise<PlanBlock[]> {
  const where = { planId: plan.id, week: { not: null } }
  const [windows, pinned, rounds] = await Promise.all([
    read.plannedVisit.groupBy({
      by: ['crewId', 'areaId', 'week', 'earliest', 'latest'],
      where,
      _count: { _all: true },
      _sum: { minutes: true },
      orderBy: [{ week: 'asc' }, { areaId: 'asc' }, { crewId: 'asc' }, { earliest: 'asc' }, { latest: 'asc' }],
    }),
    read.plannedVisit.groupBy({
      by: ['crewId', 'areaId', 'week'],
      where: { ...where, reason: 'pinned' },
      _count: { _all: true },
    }),
    read.round.findMany({
      where: { siteId: plan.siteId, weekOf: { gte: plan.startsOn } },
      select: { weekOf: true, areaId: true, crewId: true },
    }),
  ])
  const keyOf = (row: { crewId: string | null; areaId: string | null; week: number | null }) =>
    `${row.crewId} ${row.areaId} ${row.week}`
  const isPinned = new Set(pinned.map(keyOf))
  const isFrozen = new Set(rounds.map(({ weekOf, areaId, crewId }) => `${crewId} ${areaId} ${weekOf}`))
  const blocks = new Map<string, PlanBlock>()
  for (const row of windows) {
    if (row.week === null || row.crewId === null) continue
    const key = keyOf(row)
    const block = blocks.get(key) ?? {
      crewId: row.crewId,
      areaCode: codes.get(row.areaId) ?? '',
      week: row.week,
      visits: 0,
      hours: 0,
      isFrozen: isFrozen.has(`${row.crewId} ${row.areaId} ${mondayAfter(plan.startsOn, row.week)}`),
      isPinned: isPinned.has(key),
      windows: [],
    }
    const hours = (row._sum.minutes ?? 0) / 60
    const window = { earliest: row.earliest, latest: row.latest, visits: row._count._all, hours }
    blocks.set(key, {
      ...block,
      visits: block.visits + window.visits,
      hours: block.hours + hours,
      windows: [...block.windows, window],
    })
  }
  return [...blocks.values()]
}

async function impossibleOf(read: Read, planId: string, codes: ReadonlyMap<string, string>): Promise<Impossible[]> {
  const rows = await read.plannedVisit.findMany({
    where: { planId, week: null },
    orderBy: [{ dueWeek: 'asc' }, { valveId: 'asc' }],
    take: MOST_IMPOSSIBLE,
    select: { areaId: true, dueWeek: true, cause: true, reason: true, valve: { select: { tag: true } } },
  })
  return rows.map(({ areaId, dueWeek, cause, reason, valve }) => ({
    tag: valve.tag,
    areaCode: codes.get(areaId) ?? '',
    dueWeek,
    cause: cause as Impossible['cause'],
    reason: reason as Impossible['reason'],
  }))
}
