import { type CurrentState, summaryOf } from '@glandkeeper/engines/reserve/current-state'
import { factsAsTheyStand } from '@glandkeeper/engines/reserve/facts'
import { glandHistory } from '@glandkeeper/engines/reserve/gland-history'
import { standingBands } from '@glandkeeper/engines/reserve/standing'
import type { ValveModel, ValveStateModel } from '../../generated/sqlite/models.ts'
import type { Read, Write } from '../../platform/store.ts'
import { type EventRow, factsOfRows } from './facts-of-rows.ts'
import { glandForEngines, glandOfRow } from './gland-of-row.ts'

const NEVER = 2_000_000_000
const UNDATED = 1_000_000
const SPENT_FIRST = 1_000_000
const MILLISECONDS_PER_DAY = 86_400_000

/** Everything that a gland's dimensions and its events say: the facts as they stand, their course, and its end. */
export function glandRecord(valve: ValveModel, events: readonly EventRow[]) {
  const { facts, corrections } = factsOfRows(events)
  const { standing, takenBack } = factsAsTheyStand(facts, corrections)
  const history = glandHistory(glandForEngines(glandOfRow(valve)), standing)
  const knownFacts = new Set(facts.map((fact) => fact.id))
  return { standing, takenBack, knownFacts, history, state: stateRow(valve, summaryOf(history), events.length) }
}

function stateRow(valve: ValveModel, state: CurrentState, entryCount: number): ValveStateModel {
  return {
    valveId: valve.id,
    siteId: valve.siteId,
    areaId: valve.areaId,
    gapLeftMm: state.gapLeft,
    gapRightMm: state.gapRight,
    gapIsInferred: state.gapIsInferred,
    reserveMm: state.reserve,
    reserveLimitedBy: state.limitedBy,
    runsOutAt: dateOf(state.runsOutAt),
    urgency: urgencyOf(state),
    packedAt: dateOf(state.packedAt),
    packingFamily: state.packingFamily,
    lastSeenAt: dateOf(state.lastSeenAt),
    findings: JSON.stringify(state.findings),
    entryCount,
    retired: valve.retiredAt !== null,
  }
}

/**
 * One number that orders the board: spent glands first, the longest spent on top; then by the day the travel is to be
 * used up; then those nobody can date by what is left; last those whose gap nobody knows.
 *
 * A gland within the millimetres of `book` or `watch` counts as running out within the days of that word, counted from
 * the day it was last seen: little travel and no line yet stands above much travel and a long line.
 */
function urgencyOf({ reserve, runsOutAt, lastSeenAt }: CurrentState): number {
  if (reserve === null) return NEVER
  const dayOf = (moment: number) => Math.floor(moment / MILLISECONDS_PER_DAY)
  if (reserve <= 0) return dayOf(runsOutAt ?? 0) - SPENT_FIRST
  const { book, watch } = standingBands
  const within = reserve <= book.reserve ? book.days : reserve <= watch.reserve ? watch.days : Infinity
  const byMillimetres = lastSeenAt === null ? Infinity : dayOf(lastSeenAt) + within
  const day = Math.min(byMillimetres, runsOutAt === null ? Infinity : dayOf(runsOutAt))
  return day === Infinity ? UNDATED + Math.round(reserve * 100) : day
}

const FOR_RECORD = { id: true, kind: true, body: true, takenAt: true } as const

/** Reads a valve's events through the transaction and writes the state they make. */
export async function rebuildState(write: Write, siteId: string, valveId: string) {
  const valve = await write.valve.findUniqueOrThrow({ where: { id: valveId } })
  const events = await write.event.findMany({ where: { siteId, valveId }, select: FOR_RECORD })
  const record = glandRecord(valve, events)
  await write.valveState.upsert({ where: { valveId }, create: record.state, update: record.state })
  return record
}

/** New valves stand on the board before anybody has been there. */
export async function writeEmptyStates(write: Write, valves: readonly ValveModel[]): Promise<void> {
  await write.insertRows(
    'valve_state',
    valves.map((valve) => ({ ...glandRecord(valve, []).state })),
  )
}

/** Every valve whose kept state is not the state its events make. Empty is what it should be. */
export async function* statesThatDiffer(
  read: Read,
  siteId: string,
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
      let fields = await differenceOf(read, id)
      for (let look = 0; fields.length > 0 && look < 3; look += 1) {
        await new Promise((resolve) => setTimeout(resolve, 100))
        fields = await differenceOf(read, id)
      }
      if (fields.length > 0) yield { valveId: id, tag, fields }
    }
    if (valves.length < PAGE) return
    after = valves.at(-1)?.id ?? after
  }
}

async function differenceOf(read: Read, valveId: string): Promise<string[]> {
  const { state: kept, ...valve } = await read.valve.findUniqueOrThrow({ where: { id: valveId }, include: { state: true } })
  const events = await read.event.findMany({ where: { siteId: valve.siteId, valveId }, select: FOR_RECORD })
  return differences(kept, glandRecord(valve, events).state)
}

function differences(kept: ValveStateModel | null, made: ValveStateModel): string[] {
  if (kept === null) return ['(no state)']
  return Object.entries(made).flatMap(([field, value]) =>
    JSON.stringify(value) === JSON.stringify(kept[field as keyof ValveStateModel]) ? [] : [field],
  )
}

function dateOf(moment: number | null): Date | null {
  return moment === null ? null : new Date(Math.round(moment))
}
