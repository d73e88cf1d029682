import type { Outage, OutageReview, ReviewedRepack } from '@glandkeeper/contract/outages'
import { addDays } from 'date-fns/addDays'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { entriesAsTheyStand } from '../glands/index.ts'
import { slotOfOutage } from '../repack-plans/index.ts'
import { siteSettings } from '../settings/index.ts'
import { DAYS_WATCHED, type EntryAfter, reviewed, summedUp } from './reviewed.ts'

type Over = Outage & { readonly startedOn: string; readonly endedOn: string }

/** Planned against done, and what leaked within 30 days, from the plan that was in use when the outage began. */
export async function outageReview(read: Read, siteId: string, outage: Over, now: Date): Promise<Omit<OutageReview, 'outage'>> {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const { retightenAfterRepack } = await siteSettings(read, siteId)
  const begins = startOfDayAt(outage.startedOn, timeZone)
  const ends = startOfDayAt(daysAfter(outage.endedOn, 1), timeZone)
  const planned = await plannedValves(read, siteId, outage, ends)
  const repacked = await valvesRepacked(read, siteId, outage, { begins, ends })
  const valves: ReviewedRepack[] = []
  for (const valve of await valvesOf(read, [...new Set([...planned, ...repacked])])) {
    const entries = entriesAsTheyStand(valve.events).map(({ row, said, takenAt }): EntryAfter => ({
      said,
      takenAt,
      crewName: row.person.crew?.name ?? null,
    }))
    valves.push({
      tag: valve.tag,
      description: valve.description,
      areaCode: valve.area.code,
      isPlanned: planned.has(valve.id),
      ...reviewed(entries, { begins, ends, now, followUpDays: retightenAfterRepack, dayOf: (moment) => dayAt(moment, timeZone) }),
    })
  }
  const shown = valves.filter(({ isPlanned, repackedOn }) => isPlanned || repackedOn !== null)
  return { ...summedUp(shown), isComplete: now >= addDays(ends, DAYS_WATCHED), valves: shown }
}

async function plannedValves(read: Read, siteId: string, outage: Over, ends: Date): Promise<Set<string>> {
  // The newest plan that was in use while the outage went on: what was taken after it says nothing of it.
  const plan = await read.repackPlan.findFirst({
    where: { siteId, takenAt: { lt: ends }, summary: { not: '' } },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
    select: { id: true },
  })
  if (!plan) return new Set()
  const slotId = slotOfOutage(outage.outageId)
  const rows = await read.plannedRepack.findMany({ where: { planId: plan.id, slotId }, select: { valveId: true } })
  return new Set(rows.map(({ valveId }) => valveId))
}

async function valvesRepacked(
  read: Read,
  siteId: string,
  { areaCodes }: Over,
  { begins, ends }: { readonly begins: Date; readonly ends: Date },
): Promise<Set<string>> {
  const rows = await read.event.findMany({
    where: {
      siteId,
      kind: { in: ['packing.renewed', 'fact.corrected'] },
      takenAt: { gte: begins, lt: addDays(ends, DAYS_WATCHED) },
      ...(areaCodes.length > 0 && { valve: { area: { code: { in: [...areaCodes] } } } }),
    },
    select: { valveId: true },
  })
  return new Set(rows.map(({ valveId }) => valveId))
}

function valvesOf(read: Read, ids: readonly string[]) {
  return read.valve.findMany({
    where: { id: { in: [...ids] } },
    orderBy: { tag: 'asc' },
    select: {
      id: true,
      tag: true,
      description: true,
      area: { select: { code: true } },
      events: {
        select: { id: true, body: true, takenAt: true, person: { select: { crew: { select: { name: true } } } } },
      },
    },
  })
}
