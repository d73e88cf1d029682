import type { VisitCause } from '@glandkeeper/contract/round-plans'
import { type RoundPlanInput, usualPlanRules } from '@glandkeeper/engines/schedule/round-plan/input'
import { startOfDayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { skillsOf } from '../crews/index.ts'
import { closedWeeksOf, crewHoursByWeek } from './capacity.ts'
import { bandsOf, standingOfRow } from '../glands/index.ts'
import { siteSettings } from '../settings/index.ts'
import { matchVisits, type PinOfVisit, withoutDone, withoutSpent } from './before-and-pins.ts'
import { readFieldwork } from './fieldwork.ts'
import { pinsAsOf } from './pins.ts'
import { readPlanInUse } from './plan-in-use.ts'
import { mondayAfter, weekIndexOf } from './weeks.ts'
import { type PlanFrame, windowsOfValve } from './windows-of-valve.ts'

export interface PlanRequest {
  readonly siteId: string
  /** Monday of the first week. */
  readonly startsOn: string
  readonly weeks: number
  readonly frozenWeeks: number
  readonly seed: number
}

/** What is known of a visit beside what the planning needs: it goes into the row that is kept. */
export interface VisitAbout {
  readonly valveId: string
  readonly number: number
  readonly areaId: string
  readonly minutes: number
  readonly cause: VisitCause
  readonly wasWeek: number | null
}

export interface PlanToMake {
  readonly input: RoundPlanInput
  readonly about: ReadonlyMap<string, VisitAbout>
  readonly crews: readonly { readonly crewId: string; readonly name: string; readonly hours: readonly number[] }[]
  readonly areas: readonly {
    readonly areaCode: string
    readonly name: string
    readonly setUpHours: number
    readonly closedWeeks: readonly number[]
  }[]
  /** The plan in use that `before` was read from; null when there is none. */
  readonly basedOn: string | null
  /** The pins it knows of. */
  readonly pins: string
}

const PAGE = 2_000

/** Everything a plan of rounds is made from, as the register has it now. */
export async function readPlanInput(read: Read, request: PlanRequest): Promise<PlanToMake> {
  const { siteId, startsOn, weeks, frozenWeeks, seed } = request
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const settings = await siteSettings(read, siteId)
  const begins = startOfDayAt(startsOn, timeZone)
  const frame: PlanFrame = { startsOn, weeks, firstFreeWeek: frozenWeeks, timeZone, settings }
  const mondays = Array.from({ length: weeks }, (_, week) => mondayAfter(startsOn, week))
  // First: a pin that is made while the rest is read makes the plan out of date.
  const pinsKnown = await pinsAsOf(read, siteId)
  const [crews, areas, inUse, work, pins] = await Promise.all([
    crewHoursByWeek(read, siteId, mondays),
    areasToPlan(read, siteId, mondays, settings.minutesToSetUp),
    readPlanInUse(read, siteId, startsOn),
    readFieldwork(read, siteId, startsOn),
    pinsOf(read, siteId, startsOn, weeks),
  ])
  const about = new Map<string, VisitAbout>()
  const visits: RoundPlanInput['visits'][number][] = []
  const crewIds = new Set(crews.map(({ id }) => id))
  const bands = bandsOf(settings)
  for await (const valve of valvesInWalkingOrder(read, siteId)) {
    const windows = windowsOfValve({ ...valve, ...valve.state, wasMissed: work.missed.has(valve.id) }, frame)
    const { lastSeenAt } = valve.state
    const matched = matchVisits(
      windows,
      withoutDone(inUse.byValve.get(valve.id) ?? [], lastSeenAt, begins),
      withoutSpent(pins.get(valve.id) ?? [], lastSeenAt, windows),
    )
    const made = work.onRound.get(valve.id)
    const weight = weightOf(valve, bands)
    for (const [index, { window, before, pin }] of matched.entries()) {
      const id = `${valve.id} ${index + 1}`
      const isKept = before !== null && before.week >= 0 && before.week < frozenWeeks && crewIds.has(before.crewId)
      const frozen = index === 0 && made ? made : isKept ? before : null
      about.set(id, {
        valveId: valve.id,
        number: index + 1,
        areaId: valve.areaId,
        minutes: window.minutes,
        cause: window.cause,
        wasWeek: before?.week ?? null,
      })
      visits.push({
        id,
        areaId: valve.areaId,
        due: window.due,
        earliest: window.earliest,
        latest: window.latest,
        hours: window.minutes / 60,
        weight,
        before: before !== null && before.week >= frozenWeeks ? before.week : null,
        pin: pin && (pin.crewId === null || crewIds.has(pin.crewId)) ? pin : null,
        frozen: frozen && crewIds.has(frozen.crewId) ? frozen : null,
      })
    }
  }
  return {
    input: {
      weeks,
      crews: crews.map(({ id, hours, skills }) => ({ id, hours, skills: skillsOf(skills) })),
      areas: areas.map(({ id, setUpHours, closedWeeks, skill, crewId }) => ({ id, setUpHours, closedWeeks, skill, crewId })),
      visits,
      rules: {
        ...usualPlanRules,
        frozenWeeks,
        easyShare: settings.easyWeekShare,
        mostShare: settings.mostWeekShare,
      },
      seed,
    },
    about,
    crews: crews.map(({ id, name, hours }) => ({ crewId: id, name, hours })),
    areas: areas.map(({ code, name, setUpHours, closedWeeks }) => ({ areaCode: code, name, setUpHours, closedWeeks })),
    basedOn: inUse.planId,
    pins: pinsKnown,
  }
}

async function areasToPlan(read: Read, siteId: string, mondays: readonly string[], usualMinutes: number) {
  const rows = await read.area.findMany({ where: { siteId }, orderBy: [{ walkPosition: 'asc' }, { code: 'asc' }] })
  const closed = await closedWeeksOf(read, siteId, mondays)
  return rows.map(({ id, code, name, setUpMinutes, skill, crewId }) => ({
    id,
    code,
    name,
    setUpHours: (setUpMinutes ?? usualMinutes) / 60,
    closedWeeks: closed.get(id) ?? [],
    skill,
    crewId,
  }))
}

async function pinsOf(read: Read, siteId: string, startsOn: string, weeks: number) {
  const rows = await read.visitPin.findMany({ where: { siteId, weekOf: { gte: startsOn } }, orderBy: { weekOf: 'asc' } })
  const byValve = new Map<string, PinOfVisit[]>()
  for (const { valveId, weekOf, crewId, madeAt } of rows) {
    const week = weekIndexOf(weekOf, startsOn)
    if (week < weeks) byValve.set(valveId, [...(byValve.get(valveId) ?? []), { week, crewId, madeAt }])
  }
  return byValve
}

const FOR_PLAN = {
  id: true,
  areaId: true,
  access: true,
  criticality: true,
  state: { select: { lastSeenAt: true, nextLookAt: true, nextLook: true, reserveMm: true, chanceBeforeStop: true } },
} as const

/** Neighbours in the walk one after the other, so that a window cut into two weeks leaves two walks and not a chequerboard. */
async function* valvesInWalkingOrder(read: Read, siteId: string) {
  for (let skip = 0; ; skip += PAGE) {
    const rows = await read.valve.findMany({
      where: { siteId, retiredAt: null },
      orderBy: [{ areaId: 'asc' }, { level: 'asc' }, { walkPosition: 'asc' }, { id: 'asc' }],
      select: FOR_PLAN,
      take: PAGE,
      skip,
    })
    for (const { state, ...valve } of rows) yield { ...valve, state: state ?? NOTHING_KNOWN }
    if (rows.length < PAGE) return
  }
}

const NOTHING_KNOWN = { lastSeenAt: null, nextLookAt: null, nextLook: null, reserveMm: null, chanceBeforeStop: null }

const ofCriticality: Readonly<Record<string, number>> = { low: 1, ordinary: 2, high: 4 }
const ofStanding = { ample: 0, watch: 1, book: 2, spent: 3 } as const

/** What weighs most is left out last when hours run short. */
function weightOf(
  { criticality, state }: { criticality: string; state: { reserveMm: number | null; chanceBeforeStop: number | null } },
  bands: ReturnType<typeof bandsOf>,
): number {
  const standing = standingOfRow(state, bands)
  return (ofCriticality[criticality] ?? 2) + ofStanding[standing]
}
