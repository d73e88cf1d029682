import type { QueryOf } from '@glandkeeper/contract/endpoint'
import type { listPlannedRepacks, PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import type { RepackPlanModel } from '../../generated/sqlite/models.ts'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { bandsOf, standingOfRow } from '../glands/index.ts'
import { siteSettings } from '../settings/index.ts'
import { tradeHours } from './trade-hours.ts'
import { needInWords, type PackingNeed } from '../stock/index.ts'

/** As many as a person looks at before a next page. */
const PAGE = 50

const FOR_LIST = {
  valve: {
    select: {
      id: true,
      tag: true,
      description: true,
      isolationBoundary: true,
      isolatesOnLine: true,
      area: { select: { code: true } },
      state: { select: { reserveMm: true, chanceBeforeStop: true, runsOutAt: true } },
    },
  },
} as const

/** Valves of a plan, those that cost most first, a page at a time. */
export async function plannedRepacks(
  read: Read,
  plan: RepackPlanModel,
  { slotId, areaCode, tag, skip = 0 }: QueryOf<typeof listPlannedRepacks>,
): Promise<{ repacks: PlannedRepack[]; total: number }> {
  const where = {
    planId: plan.id,
    ...(slotId !== undefined && { slotId: slotId === 'none' ? null : slotId }),
    ...((areaCode !== undefined || tag !== undefined) && {
      valve: { ...(areaCode !== undefined && { area: { code: areaCode } }), ...(tag !== undefined && { tag }) },
    }),
  }
  const [rows, total, settings, site] = await Promise.all([
    read.plannedRepack.findMany({
      where,
      orderBy: [{ cost: 'desc' }, { valveId: 'asc' }],
      take: PAGE,
      skip,
      include: FOR_LIST,
    }),
    read.plannedRepack.count({ where }),
    siteSettings(read, plan.siteId),
    read.site.findUniqueOrThrow({ where: { id: plan.siteId }, select: { timeZone: true } }),
  ])
  const pins = await pinsOf(read, plan.siteId, rows)
  const bands = bandsOf(settings)
  const repacks = rows.map(({ valve, ...row }) => ({
    tag: valve.tag,
    description: valve.description,
    areaCode: valve.area.code,
    boundary: valve.isolationBoundary,
    isolatesOnLine: valve.isolatesOnLine,
    standing: standingOfRow(valve.state ?? { reserveMm: null, chanceBeforeStop: null }, bands),
    reserve: valve.state?.reserveMm ?? null,
    runsOutOn: valve.state?.runsOutAt ? dayAt(valve.state.runsOutAt, site.timeZone) : null,
    slotId: row.slotId,
    reason: row.reason,
    blockedBy: row.blockedBy,
    runnerUp: row.runnerUp === null ? null : (JSON.parse(row.runnerUp) as PlannedRepack['runnerUp']),
    chanceOut: row.chanceOut,
    expectedLeaks: row.expectedLeaks,
    cost: { running: row.runningCost, leaks: row.leakCost, waste: row.wasteCost, total: row.cost },
    ifKept: row.ifKept === null ? null : (JSON.parse(row.ifKept) as PlannedRepack['ifKept']),
    hours: tradeHours(row),
    pin: pins.get(row.valveId) ?? null,
    needs: row.needs === null ? null : needInWords(JSON.parse(row.needs) as PackingNeed),
  }))
  return { repacks: repacks as PlannedRepack[], total }
}

/** Of several pins of a valve the one that puts it somewhere. */
async function pinsOf(read: Read, siteId: string, rows: readonly { readonly valveId: string }[]) {
  const pins = await read.repackPin.findMany({
    where: { siteId, valveId: { in: rows.map(({ valveId }) => valveId) } },
    orderBy: { kind: 'desc' },
    include: { person: { select: { name: true } } },
  })
  return new Map(
    pins.map(({ valveId, kind, slotId, person }) => [valveId, { kind: kind as 'in' | 'not in', slotId, by: person.name }]),
  )
}
