import { type CurrentState, summaryOf } from '@glandkeeper/engines/reserve/current-state'
import { factsAsTheyStand } from '@glandkeeper/engines/reserve/facts'
import { glandHistory } from '@glandkeeper/engines/reserve/gland-history'
import type { ValveModel, ValveStateModel } from '../../generated/sqlite/models.ts'
import type { Read, Write } from '../../platform/store.ts'
import { type EventRow, factsOfRows } from './facts-of-rows.ts'
import { basisOfKept, type ForecastBasis, forecastBasis } from './forecast-basis.ts'
import { FORECAST_CHANCES, forecastOfGland, type GlandForecast, type KeptForecast } from './forecast-of-gland.ts'
import { keepLeaks, leakRows, leaksDiffer } from './kept-leaks.ts'
import { glandForEngines, glandOfRow } from './gland-of-row.ts'

const NEVER = 2_000_000_000
const UNDATED = 1_500_000
/** Above every chance worth an order, so that dates follow chances. */
const BY_DATE = 1_000_000
const LEAST_CHANCE = 0.001
const SPENT_FIRST = 1_000_000
const MILLISECONDS_PER_DAY = 86_400_000
const MIDDLE = FORECAST_CHANCES.indexOf(0.5)

/** What a gland's dimensions and its events say of the past: the facts as they stand, and their course. */
export function glandCourse(valve: ValveModel, events: readonly EventRow[]) {
  const { facts, corrections } = factsOfRows(events)
  const { standing, takenBack } = factsAsTheyStand(facts, corrections)
  const gland = glandForEngines(glandOfRow(valve))
  const knownFacts = new Set(facts.map((fact) => fact.id))
  return { gland, standing, takenBack, knownFacts, history: glandHistory(gland, standing) }
}

/** The course, what is to come by the given basis, and the state both make. */
export function glandRecord(valve: ValveModel, events: readonly EventRow[], basis: ForecastBasis) {
  const course = glandCourse(valve, events)
  const ahead = forecastOfGland(valve, course.gland, course, basis)
  const state = stateRow(valve, summaryOf(course.history), { ahead, basis, entryCount: events.length })
  return { ...course, ahead, state }
}

function stateRow(
  valve: ValveModel,
  state: CurrentState,
  { ahead, basis, entryCount }: { ahead: GlandForecast; basis: ForecastBasis; entryCount: number },
): ValveStateModel {
  const { forecast, look } = ahead
  return {
    valveId: valve.id,
    siteId: valve.siteId,
    areaId: valve.areaId,
    gapLeftMm: state.gapLeft,
    gapRightMm: state.gapRight,
    gapIsInferred: state.gapIsInferred,
    reserveMm: state.reserve,
    reserveLimitedBy: state.limitedBy,
    runsOutAt: dateOf(state.spentSince ?? forecast?.dates[MIDDLE] ?? null),
    chanceBeforeStop: forecast?.chanceBeforeStop ?? null,
    stopAt: basis.stopAt,
    fitId: basis.fitId,
    forecast: forecast && JSON.stringify(forecast),
    nextLookAt: dateOf(look?.at ?? null),
    nextLook: look && JSON.stringify(look),
    urgency: urgencyOf(state, forecast),
    packedAt: dateOf(state.packedAt),
    packingFamily: state.packingFamily,
    lastSeenAt: dateOf(state.lastSeenAt),
    findings: JSON.stringify(state.findings),
    entryCount,
    retired: valve.retiredAt !== null,
  }
}

/**
 * One number that orders the board: spent glands first, the longest spent on top; then by the chance that the travel is
 * used up before the next stop; then, where that chance is next to nothing, by the middle of the forecast; then those
 * nobody can date by what is left; last those whose gap nobody knows.
 */
function urgencyOf({ reserve, spentSince }: CurrentState, forecast: KeptForecast | null): number {
  if (reserve === null) return NEVER
  const dayOf = (moment: number) => Math.floor(moment / MILLISECONDS_PER_DAY)
  if (reserve <= 0) return dayOf(spentSince ?? 0) - SPENT_FIRST
  if (forecast !== null && forecast.chanceBeforeStop >= LEAST_CHANCE) return Math.round((1 - forecast.chanceBeforeStop) * BY_DATE)
  const middle = forecast?.dates[MIDDLE] ?? null
  return middle === null ? UNDATED + Math.round(reserve * 100) : BY_DATE + dayOf(middle)
}

const FOR_RECORD = { id: true, kind: true, body: true, takenAt: true } as const

/** Reads a valve's events through the transaction and writes the state they make. */
export async function rebuildState(write: Write, siteId: string, valveId: string, basis: ForecastBasis) {
  const { monitoring, ...valve } = await write.valve.findUniqueOrThrow({
    where: { id: valveId },
    include: { monitoring: { select: { judgedFrom: true } } },
  })
  const events = await write.event.findMany({ where: { siteId, valveId }, select: FOR_RECORD })
  const record = glandRecord(valve, events, basis)
  await write.valveState.upsert({ where: { valveId }, create: record.state, update: record.state })
  await keepLeaks(write, valveId, leakRows(valve, record.standing, monitoring?.judgedFrom ?? null))
  return record
}

/** New valves stand on the board before anybody has been there. */
export async function writeEmptyStates(write: Write, siteId: string, valves: readonly ValveModel[], now: Date): Promise<void> {
  const basis = await forecastBasis(write, siteId, now)
  await write.insertRows(
    'valve_state',
    valves.map((valve) => ({ ...glandRecord(valve, [], basis).state })),
  )
}

/** Every valve whose kept state is not the state its events make. Empty is what it should be. */
export async function* statesThatDiffer(
  read: Read,
  siteId: string,
  now: Date,
): AsyncGenerator<{ valveId: string; tag: string; fields: string[] }> {
  const PAGE = 200
  let after = ''
  for (;;) {
    const valves = await read.valve.findMany({
      where: { siteId, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: PAGE,
      select: { id: true, tag: true },
    })
    for (const { id, tag } of valves) {
      // Read again before it is named: an entry may have come between the two reads.
      let fields = await differenceOf(read, id, now)
      for (let look = 0; fields.length > 0 && look < 3; look += 1) {
        await new Promise((resolve) => setTimeout(resolve, 100))
        fields = await differenceOf(read, id, now)
      }
      if (fields.length > 0) yield { valveId: id, tag, fields }
    }
    if (valves.length < PAGE) return
    after = valves.at(-1)?.id ?? after
  }
}

async function differenceOf(read: Read, valveId: string, now: Date): Promise<string[]> {
  const {
    state: kept,
    monitoring,
    leaks,
    ...valve
  } = await read.valve.findUniqueOrThrow({
    where: { id: valveId },
    include: { state: true, monitoring: { select: { judgedFrom: true } }, leaks: true },
  })
  const events = await read.event.findMany({ where: { siteId: valve.siteId, valveId }, select: FOR_RECORD })
  if (kept === null) return ['(no state)']
  const basis = await basisOfKept(read, valve.siteId, kept, now)
  const { state, standing } = glandRecord(valve, events, basis)
  const made = leakRows(valve, standing, monitoring?.judgedFrom ?? null)
  return [...differences(kept, state), ...(leaksDiffer(leaks, made) ? ['leaks'] : [])]
}

function differences(kept: ValveStateModel, made: ValveStateModel): string[] {
  return Object.entries(made).flatMap(([field, value]) =>
    JSON.stringify(value) === JSON.stringify(kept[field as keyof ValveStateModel]) ? [] : [field],
  )
}

function dateOf(moment: number | null): Date | null {
  return moment === null ? null : new Date(Math.round(moment))
}
