import type { moveBlock, pinVisit, unpinVisit } from '@glandkeeper/contract/round-plans'
import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { areaOf } from '../areas/index.ts'
import { crewOf } from '../crews/index.ts'
import { planInUse } from './plan-in-use.ts'
import { mondayAfter, weekIndexOf } from './weeks.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/**
 * A planner's word that a valve is visited in a week. In the plan in use the visit that is due nearest goes there at
 * once; every plan after keeps to it.
 */
export async function pin(write: Write, by: By, { tag, weekOf, crewId }: BodyOf<typeof pinVisit>, now: Date): Promise<void> {
  const { siteId } = by
  const valve = await write.valve.findUnique({ where: { siteId_tag: { siteId, tag } } })
  if (!valve || valve.retiredAt) throw new Refusal('valve/unknown', tag)
  const crew = crewId === null ? null : await crewOf(write, siteId, crewId)
  const plan = await planInUse(write, siteId)
  if (plan) {
    const week = weekIndexOf(weekOf, plan.startsOn)
    const visits = await write.plannedVisit.findMany({ where: { planId: plan.id, valveId: valve.id } })
    const nearest = visits.toSorted((one, other) => Math.abs(one.dueWeek - week) - Math.abs(other.dueWeek - week))[0]
    if (nearest && week >= 0 && week < plan.weeks) {
      await refuseFrozen(write, siteId, plan.startsOn, { ...nearest, areaId: valve.areaId })
      if (nearest.week !== null)
        await write.visitPin.deleteMany({
          where: { siteId, valveId: valve.id, weekOf: mondayAfter(plan.startsOn, nearest.week) },
        })
      await write.plannedVisit.update({
        where: { planId_valveId_number: { planId: plan.id, valveId: valve.id, number: nearest.number } },
        data: { week, crewId: crewId ?? nearest.crewId ?? (await anyCrew(write, siteId)), reason: 'pinned' },
      })
    }
  }
  await writePin(write, by, valve.id, { weekOf, crewId }, now)
  await noteChange(
    write,
    by,
    {
      subject: 'valve',
      subjectId: valve.id,
      what: 'visit pinned',
      before: {},
      after: { weekOf, crew: crew?.name ?? null },
    },
    now,
  )
}

/** The next plan chooses the week again. */
export async function unpin(write: Write, by: By, { tag, weekOf }: BodyOf<typeof unpinVisit>, now: Date): Promise<boolean> {
  const { siteId } = by
  const valve = await write.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, select: { id: true } })
  if (!valve) throw new Refusal('valve/unknown', tag)
  const { count } = await write.visitPin.deleteMany({ where: { siteId, valveId: valve.id, weekOf } })
  if (count > 0)
    await noteChange(
      write,
      by,
      { subject: 'valve', subjectId: valve.id, what: 'pin of a visit removed', before: { weekOf }, after: {} },
      now,
    )
  return count > 0
}

/** Moves all visits of an area and crew from one week to another and pins each there. @returns how many */
export async function move(
  write: Write,
  by: By,
  planId: string,
  { areaCode, crewId, from, to }: BodyOf<typeof moveBlock>,
  now: Date,
): Promise<number> {
  const { siteId } = by
  const plan = await write.roundPlan.findFirst({ where: { id: planId, siteId, summary: { not: '' } } })
  if (!plan || to >= plan.weeks) throw new Refusal('plan/unknown', planId)
  const area = await areaOf(write, siteId, areaCode)
  await refuseFrozen(write, siteId, plan.startsOn, { areaId: area.id, crewId, week: from })
  const block = { planId, areaId: area.id, crewId, week: from }
  const visits = await write.plannedVisit.findMany({ where: block, select: { valveId: true } })
  if (visits.length === 0) throw new Refusal('plan/no-visit')
  await write.plannedVisit.updateMany({ where: block, data: { week: to, reason: 'pinned' } })
  const [weekBefore, weekOf] = [mondayAfter(plan.startsOn, from), mondayAfter(plan.startsOn, to)]
  const valveIds = visits.map(({ valveId }) => valveId)
  for (const week of [weekBefore, weekOf])
    await write.visitPin.deleteMany({ where: { siteId, valveId: { in: valveIds }, weekOf: week } })
  await write.visitPin.createMany({
    data: valveIds.map((valveId) => ({ id: newId(), siteId, valveId, weekOf, crewId, personId: by.personId, madeAt: now })),
  })
  await noteChange(
    write,
    by,
    {
      subject: 'plan',
      subjectId: planId,
      what: 'visits moved',
      before: { areaCode, weekOf: weekBefore },
      after: { areaCode, weekOf, visits: visits.length },
    },
    now,
  )
  return visits.length
}

async function writePin(
  write: Write,
  { siteId, personId }: By,
  valveId: string,
  { weekOf, crewId }: { readonly weekOf: string; readonly crewId: string | null },
  now: Date,
): Promise<void> {
  // Not changed in place: a draft knows by the newest pin whether it is out of date.
  await write.visitPin.deleteMany({ where: { siteId, valveId, weekOf } })
  await write.visitPin.create({ data: { id: newId(), siteId, valveId, weekOf, crewId, personId, madeAt: now } })
}

/** Changes with every pin that is made or taken out. */
export async function pinsAsOf(read: Pick<Read, 'visitPin'>, siteId: string): Promise<string> {
  const { _count, _max } = await read.visitPin.aggregate({ where: { siteId }, _count: { _all: true }, _max: { id: true } })
  return `${_count._all} ${_max.id ?? ''}`
}

/** What a round is made of moves no more. */
async function refuseFrozen(
  write: Write,
  siteId: string,
  startsOn: string,
  { areaId, crewId, week }: { readonly areaId: string; readonly crewId: string | null; readonly week: number | null },
): Promise<void> {
  if (week === null) return
  const weekOf = mondayAfter(startsOn, week)
  const round = await write.round.findFirst({ where: { siteId, weekOf, areaId, crewId, closedAt: null }, select: { name: true } })
  if (round) throw new Refusal('plan/frozen', round.name)
}

async function anyCrew(write: Write, siteId: string): Promise<string | null> {
  const crew = await write.crew.findFirst({ where: { siteId, retiredAt: null }, orderBy: { name: 'asc' }, select: { id: true } })
  return crew?.id ?? null
}
