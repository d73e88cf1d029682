import type { Outage, TradeHours } from '@glandkeeper/contract/outages'
import type { Access } from '@glandkeeper/contract/valves'
import type { Kit } from '@glandkeeper/contract/kits'
import type { z } from 'zod'
import { dayAt } from '../../platform/clock.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { repackPlanInUse, slotOfOutage, tradeHours } from '../repack-plans/index.ts'
import type { ValveRow } from './pack-of-valve.ts'
import { inParts } from './parts.ts'
import { inWalkingOrder } from './valves-to-pack.ts'

/** One valve of the outage, as its cover lists it. */
export interface CoverRow {
  readonly valveId: string
  readonly tag: string
  readonly description: string
  readonly areaName: string
  readonly access: z.infer<typeof Access>
  /** What it is called; empty where the register names none. */
  readonly boundary: string
  readonly hours: TradeHours
  /** The part its pack is in. */
  readonly part: number
}

export interface OutageCover extends Pick<Outage, 'name' | 'earliestOn' | 'likelyOn' | 'latestOn' | 'days' | 'hours' | 'state'> {
  /** Areas that are down; empty means the whole site. */
  readonly areaNames: readonly string[]
  readonly printedOn: string
  readonly part: number
  readonly parts: number
  /** Null: no plan of repacks is in use. */
  readonly planName: string | null
  /** Of all parts. */
  readonly valves: readonly CoverRow[]
  /** Of the whole outage, in its first part alone. */
  readonly kit: Kit | null
}

interface Wanted {
  readonly siteId: string
  readonly outageId: string
  readonly part: number
  readonly now: Date
}

/** What the cover says, and the valves of the part; refused where there is no such outage, or no such part of it. */
export async function outageToPack(
  read: Read,
  { siteId, outageId, part, now }: Wanted,
): Promise<{ cover: OutageCover; rows: ValveRow[] }> {
  const outage = await read.outage.findFirst({
    where: { id: outageId, siteId },
    include: { site: { select: { timeZone: true, areas: { select: { code: true, name: true } } } } },
  })
  if (!outage) throw new Refusal('outage/unknown', outageId)
  const plan = await repackPlanInUse(read, siteId)
  const parts = plan ? inParts(await plannedIn(read, siteId, plan.id, slotOfOutage(outageId))) : []
  const count = Math.max(parts.length, 1)
  if (part > count) {
    const detail = `the pack of this outage has ${count} ${count === 1 ? 'part' : 'parts'}`
    throw new Refusal('request/invalid', detail, [{ pointer: '#query/part', detail }])
  }
  const codes = JSON.parse(outage.areaCodes) as string[]
  const cover: OutageCover = {
    name: outage.name,
    earliestOn: outage.earliestOn,
    likelyOn: outage.likelyOn,
    latestOn: outage.latestOn,
    days: outage.days,
    state: outage.state as Outage['state'],
    hours: tradeHours(outage),
    areaNames: codes.map((code) => outage.site.areas.find((area) => area.code === code)?.name ?? code),
    printedOn: dayAt(now, outage.site.timeZone),
    part,
    parts: count,
    planName: plan?.name ?? null,
    valves: parts.flatMap((valves, index) => valves.map((valve) => ({ ...valve, part: index + 1 }))),
    kit: null,
  }
  return { cover, rows: await rowsOf(read, parts[part - 1] ?? []) }
}

type Planned = Omit<CoverRow, 'part'> & { readonly isolatedAs: string }

/** Only what a cover says of each: an outage may have thousands. */
async function plannedIn(read: Read, siteId: string, planId: string, slotId: string): Promise<Planned[]> {
  const planned = await read.plannedRepack.findMany({
    where: { planId, slotId, valve: { siteId, retiredAt: null } },
    orderBy: inWalkingOrder.map((valve) => ({ valve })),
    select: {
      valveId: true,
      boundary: true,
      fittingHours: true,
      scaffoldingHours: true,
      isolatingHours: true,
      valve: {
        select: { tag: true, description: true, access: true, isolationBoundary: true, area: { select: { name: true } } },
      },
    },
  })
  return planned.map(({ valveId, boundary, valve, ...hours }) => ({
    valveId,
    isolatedAs: boundary,
    boundary: valve.isolationBoundary,
    tag: valve.tag,
    description: valve.description,
    access: valve.access as CoverRow['access'],
    areaName: valve.area.name,
    hours: tradeHours(hours),
  }))
}

async function rowsOf(read: Read, valves: readonly { readonly valveId: string }[]): Promise<ValveRow[]> {
  const rows = await read.valve.findMany({ where: { id: { in: valves.map(({ valveId }) => valveId) } }, include: { area: true } })
  const byId = new Map(rows.map((row) => [row.id, row]))
  return valves.flatMap(({ valveId }) => byId.get(valveId) ?? [])
}
