import type { FieldEvent } from '@glandkeeper/contract/events'
import type { RowFault } from '@glandkeeper/contract/imports'
import { canonicalJson } from '../../platform/chain.ts'
import { idOfParts } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { understand } from '../events/index.ts'
import { faultsByColumn, type JudgeContext, type JudgedRow, readRow, type ReadRow } from './judge.ts'
import type { RawRow } from './read-file.ts'

export interface HistoryPlan {
  readonly event: FieldEvent
  readonly unchanged: boolean
}

/** Fields each kind of entry has; a figure in another column is a fault and not silently dropped. */
const fieldsOfKind: Readonly<Record<string, readonly string[]>> = {
  'reading.taken': ['gapLeft', 'gapRight', 'threadLeft', 'leak', 'stem'],
  'gland.nipped': ['turnsLeft', 'turnsRight', 'leakBefore', 'leakAfter', 'stem'],
  'leak.seen': ['leak', 'dropsPerMinute', 'screeningValue'],
  'packing.renewed': ['family', 'rings', 'section', 'cut', 'gapLeft', 'gapRight', 'proved'],
  'ring.added': ['rings', 'gapLeft', 'gapRight'],
  'visit.missed': ['reason'],
}
const ofEveryKind = new Set(['tag', 'takenAt', 'kind', 'takenBy', 'note'])

/** Judges rows of a history. A row read before, with the same values, is the same entry and is written once. */
export async function judgeHistory(context: JudgeContext, rows: readonly RawRow[]): Promise<JudgedRow<HistoryPlan>[]> {
  const read = rows.map((raw) => readRow('history', context, raw))
  const tags = [...new Set(read.map((row) => String(row.given['tag'] ?? '')))]
  const valves = await context.read.valve.findMany({
    where: { siteId: context.siteId, tag: { in: tags } },
    select: { id: true, tag: true },
  })
  const byTag = new Map(valves.map((valve) => [valve.tag, valve.id]))
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

function judgeEntry(context: JudgeContext, row: ReadRow, valves: ReadonlyMap<string, string>): JudgedRow<HistoryPlan> {
  const faults: RowFault[] = [...row.faults]
  const kind = String(row.given['kind'] ?? '')
  const tag = String(row.given['tag'] ?? '')
  const fault = (field: string, detail: string) =>
    faults.push(...faultsByColumn('history', context.columns, row.raw, [{ pointer: `#/${field}`, detail }]))
  const valveId = valves.get(tag)
  if (tag !== '' && valveId === undefined) fault('tag', `no valve ${tag} is in the register`)
  const fields = fieldsOfKind[kind]
  const strange = fields ? Object.keys(row.given).filter((field) => !ofEveryKind.has(field) && !fields.includes(field)) : []
  for (const field of strange) fault(field, 'does not belong to this kind of entry')
  if (faults.length > 0 || valveId === undefined) return { raw: row.raw, faults, plan: null }
  try {
    return {
      raw: row.raw,
      faults,
      plan: { event: understand(asEvent(context, row, valveId, kind), context.now), unchanged: false },
    }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const named = error.errors ?? [{ pointer: '#/kind', detail: error.detail ?? error.code }]
    return { raw: row.raw, faults: faultsByColumn('history', context.columns, row.raw, named), plan: null }
  }
}

function asEvent(context: JudgeContext, { given }: ReadRow, valveId: string, kind: string): Record<string, unknown> {
  const { tag, takenAt, kind: _, ...rest } = given
  // The same kind twice at one time on one valve is two entries: the second of a file gets an id of its own.
  const key = [context.siteId, String(tag), String(takenAt), kind].join('\u001f')
  const nth = (context.seen.get(key) ?? 0) + 1
  context.seen.set(key, nth)
  const turns = kind === 'gland.nipped' ? { turnsRight: rest['turnsRight'] ?? rest['turnsLeft'] } : {}
  const family = kind === 'packing.renewed' ? { family: rest['family'] ?? 'unknown' } : {}
  return { ...rest, ...turns, ...family, id: idOfParts([key, String(nth)]), version: 1, kind, valveId, takenAt, device: 'import' }
}

function comparedWith(row: JudgedRow<HistoryPlan>, knownBody: string | undefined): JudgedRow<HistoryPlan> {
  if (!row.plan || knownBody === undefined) return row
  if (knownBody === canonicalJson(row.plan.event)) return { ...row, plan: { ...row.plan, unchanged: true } }
  const detail = 'an entry of this kind and time is in the register with other values: correct it on the page of the valve'
  return { raw: row.raw, faults: [{ row: row.raw.row, column: '', value: '', detail }], plan: null }
}
