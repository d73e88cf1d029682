import { type CurrentState, summaryOf } from '@glandkeeper/engines/reserve/current-state'
import { factsAsTheyStand } from '@glandkeeper/engines/reserve/facts'
import { glandHistory } from '@glandkeeper/engines/reserve/gland-history'
import type { ValveModel, ValveStateModel } from '../../generated/sqlite/models.ts'
import type { Read, Write } from '../../platform/store.ts'
import { type EventRow, factsOfRows } from './facts-of-rows.ts'
import { glandForEngines, glandOfRow } from './gland-of-row.ts'

const NEVER = 2_000_000_000
const MILLISECONDS_PER_DAY = 86_400_000

/** Everything that a gland's dimensions and its events say: the facts as they stand, their course, and its end. */
export function glandRecord(valve: ValveModel, events: readonly EventRow[]) {
  const { facts, corrections } = factsOfRows(events)
  const { standing, takenBack } = factsAsTheyStand(facts, corrections)
  const history = glandHistory(glandForEngines(glandOfRow(valve)), standing)
  return { standing, takenBack, history, state: stateRow(valve, summaryOf(history), events.length) }
}

function stateRow(valve: ValveModel, state: CurrentState, entryCount: number): ValveStateModel {
  return {
    valveId: valve.id,
    siteId: valve.siteId,
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
 * One number that orders the board: spent glands first, the longest spent on top; then by the day the line meets
 * zero; then those without a line by what is left; last those whose gap nobody knows.
 */
function urgencyOf({ reserve, runsOutAt }: CurrentState): number {
  const day = runsOutAt === null ? null : Math.floor(runsOutAt / MILLISECONDS_PER_DAY)
  if (reserve === null) return NEVER
  if (reserve <= 0) return (day ?? 0) - 1_000_000
  return day ?? 1_000_000 + Math.round(reserve * 100)
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
      include: { state: true },
    })
    for (const { state: kept, ...valve } of valves) {
      const events = await read.event.findMany({ where: { siteId, valveId: valve.id }, select: FOR_RECORD })
      const fields = differences(kept, glandRecord(valve, events).state)
      if (fields.length > 0) yield { valveId: valve.id, tag: valve.tag, fields }
    }
    if (valves.length < PAGE) return
    after = valves.at(-1)?.id ?? after
  }
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
