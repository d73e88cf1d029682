import type { FieldEvent } from '@glandkeeper/contract/events'
import type { Fault } from '@glandkeeper/contract/problem'
import { canonicalJson } from '../../platform/chain.ts'
import { Refusal } from '../../platform/problem.ts'
import { understand } from '../events/index.ts'
import {
  faultsByColumn,
  type JudgeContext,
  type JudgedRow,
  readRow,
  type ReadRow,
  retiredInWords,
  rowFault,
  shortened,
} from './judge.ts'
import { nameEntry } from './name-entry.ts'
import type { RawRow } from './read-file.ts'

export interface HistoryPlan {
  readonly event: FieldEvent
  readonly unchanged: boolean
}

/** Fields each kind of entry has; a figure in another column is a fault and not silently dropped. */
const fieldsOfKind: Readonly<Record<string, readonly string[]>> = {
  'reading.taken': ['gapLeft', 'gapRight', 'threadRemaining', 'leak', 'stem'],
  'gland.nipped': ['turnsLeft', 'turnsRight', 'leakBefore', 'leakAfter', 'stem'],
  'leak.seen': ['leak', 'dropsPerMinute', 'screeningValue', 'background', 'instrument'],
  'packing.renewed': ['family', 'rings', 'section', 'cut', 'gapLeft', 'gapRight', 'proved'],
  'ring.added': ['rings', 'gapLeft', 'gapRight'],
  'visit.missed': ['reason'],
}
interface KnownValve {
  readonly id: string
  readonly retiredAt: Date | null
}

const ofEveryKind = new Set(['tag', 'takenAt', 'kind', 'takenBy', 'note', 'occurrence'])

/** Judges rows of a history. A row read before, with the same values, is the same entry and is written once. */
export async function judgeHistory(context: JudgeContext, rows: readonly RawRow[]): Promise<JudgedRow<HistoryPlan>[]> {
  const read = rows.map((raw) => readRow('history', context, raw))
  const tags = [...new Set(read.map((row) => String(row.given['tag'] ?? '')))]
  const valves = await context.read.valve.findMany({
    where: { siteId: context.siteId, tag: { in: tags } },
    select: { id: true, tag: true, retiredAt: true },
  })
  const byTag = new Map(valves.map((valve) => [valve.tag, valve]))
  const judged = read.map((row) => judgeEntry(context, row, byTag))
  const ids = judged.flatMap((row) => row.plan?.event.id ?? [])
  const known = new Map(
    (await context.read.event.findMany({ where: { id: { in: ids } }, select: { id: true, body: true } })).map((row) => [
      row.id,
      row.body,
    ]),
  )
  return judged.map((row) => comparedWith(row, row.plan ? known.get(row.plan.event.id) : undefined))
}

function judgeEntry(context: JudgeContext, row: ReadRow, valves: ReadonlyMap<string, KnownValve>): JudgedRow<HistoryPlan> {
  const kind = String(row.given['kind'] ?? '')
  const tag = String(row.given['tag'] ?? '')
  const valve = valves.get(tag)
  const found: Fault[] = []
  if (tag !== '' && valve === undefined) found.push({ pointer: '#/tag', detail: `no valve ${shortened(tag)} is in the register` })
  if (valve?.retiredAt) found.push({ pointer: '#/tag', detail: retiredInWords(valve.retiredAt, context.timeZone) })
  const fields = fieldsOfKind[kind]
  const strange = fields ? Object.keys(row.given).filter((field) => !ofEveryKind.has(field) && !fields.includes(field)) : []
  found.push(...strange.map((field) => ({ pointer: `#/${field}`, detail: 'does not belong to this kind of entry' })))
  // Named before anything is refused: a bad row keeps its place among its like.
  const named = nameEntry(context, row, valve?.id)
  if (named.fault !== null) found.push({ pointer: '#/occurrence', detail: named.fault })
  const judged = { raw: row.raw, plan: null, occurrence: named.occurrence }
  const inColumns = (faults: readonly Fault[]) => faultsByColumn('history', context.columns, row.raw, faults)
  const faults = [...row.faults, ...inColumns(found)]
  if (faults.length > 0 || valve === undefined || named.id === null) return { ...judged, faults }
  try {
    const event = understand(asEvent(row, named.id, valve.id, kind), context.now)
    return { ...judged, faults, plan: { event, unchanged: false } }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return { ...judged, faults: inColumns(error.errors ?? [{ pointer: '#/kind', detail: error.detail ?? error.code }]) }
  }
}

function asEvent({ given }: ReadRow, id: string, valveId: string, kind: string): Record<string, unknown> {
  const { tag: _tag, kind: _kind, occurrence: _occurrence, ...rest } = given
  const turns = kind === 'gland.nipped' ? { turnsRight: rest['turnsRight'] ?? rest['turnsLeft'] } : {}
  const family = kind === 'packing.renewed' ? { family: rest['family'] ?? 'unknown' } : {}
  return { ...rest, ...turns, ...family, id, version: 1, kind, valveId, device: 'import' }
}

function comparedWith(row: JudgedRow<HistoryPlan>, knownBody: string | undefined): JudgedRow<HistoryPlan> {
  if (!row.plan || knownBody === undefined) return row
  if (knownBody === canonicalJson(row.plan.event)) return { ...row, plan: { ...row.plan, unchanged: true } }
  const detail = 'an entry of this kind and time is in the register with other values: correct it on the page of the valve'
  return { ...row, faults: [rowFault(row.raw, '', '', detail)], plan: null }
}
