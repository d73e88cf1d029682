import type { RowFault } from '@glandkeeper/contract/imports'
import { faultsOf } from '@glandkeeper/contract/problem'
import { ValveInput } from '@glandkeeper/contract/valves'
import { canonicalJson } from '../../platform/chain.ts'
import { glandFaults, presentInput } from '../valves/index.ts'
import { faultsByColumn, type JudgeContext, type JudgedRow, readRow, type ReadRow } from './judge.ts'
import type { RawRow } from './read-file.ts'

export interface ValvePlan {
  readonly input: ValveInput
  /** The valve as the register has it, to be changed; null: a new one. */
  readonly existing: { readonly valveId: string; readonly revision: number; readonly input: ValveInput } | null
  readonly unchanged: boolean
  readonly areaName: string | null
}

const glandFields = new Set(Object.keys(ValveInput.shape.gland.shape))

/** What a new valve is where the file says nothing: the cautious answer, or not known. */
const untold = {
  description: '',
  level: 0,
  fluid: '',
  temperature: null,
  pressure: null,
  valveKind: 'other',
  stemMovement: null,
  isolationBoundary: '',
  isolatesOnLine: false,
  access: 'floor',
  criticality: 'ordinary',
} as const

const untoldGland = {
  boxBore: null,
  stemDiameter: null,
  boxDepth: null,
  followerKind: null,
  noseLength: null,
  leastEngagement: 3.2,
  keepClear: 3,
  studThread: null,
  studCount: null,
  studGrade: 'unknown',
  lubrication: 'unknown',
} as const

/** Judges rows of a valve list. A tag the register knows is changed in the columns the file has, and in no other. */
export async function judgeValves(context: JudgeContext, rows: readonly RawRow[]): Promise<JudgedRow<ValvePlan>[]> {
  const read = rows.map((raw) => readRow('valves', context, raw))
  const tags = [...new Set(read.map((row) => String(row.given['tag'] ?? '')))]
  const known = await context.read.valve.findMany({
    where: { siteId: context.siteId, tag: { in: tags } },
    include: { area: true },
  })
  const byTag = new Map(known.map((row) => [row.tag, { valveId: row.id, revision: row.revision, input: presentInput(row) }]))
  return read.map((row) => judgeValve(context, row, byTag.get(String(row.given['tag'])) ?? null))
}

function judgeValve(context: JudgeContext, row: ReadRow, existing: ValvePlan['existing']): JudgedRow<ValvePlan> {
  const parsed = ValveInput.safeParse(asValve(row, existing?.input))
  const faults: RowFault[] = [...row.faults]
  const unread = new Set(faults.map((fault) => fault.column))
  const contractFaults = parsed.success ? glandFaults(parsed.data.gland) : faultsOf(parsed.error)
  // What could not be read at all was said already; that it is also missing need not be said again.
  faults.push(...faultsByColumn('valves', context.columns, row.raw, contractFaults).filter((fault) => !unread.has(fault.column)))
  const tag = String(row.given['tag'] ?? '')
  const first = context.seen.get(tag)
  if (first === undefined) context.seen.set(tag, row.raw.row)
  else if (tag !== '') faults.push({ row: row.raw.row, column: 'tag', value: tag, detail: `this tag is in row ${first} already` })
  if (!parsed.success || faults.length > 0) return { raw: row.raw, faults, plan: null }
  const input = parsed.data
  const unchanged = existing !== null && canonicalJson(existing.input) === canonicalJson(input)
  const areaName = row.given['areaName']
  return {
    raw: row.raw,
    faults,
    plan: { input, existing, unchanged, areaName: areaName === undefined ? null : String(areaName) },
  }
}

function asValve({ given, raw }: ReadRow, existing: ValveInput | undefined): Record<string, unknown> {
  const valve: Record<string, unknown> = existing ? { ...existing } : { ...untold, walkPosition: raw.row }
  const gland: Record<string, unknown> = existing ? { ...existing.gland } : { ...untoldGland }
  for (const [field, value] of Object.entries(given)) {
    if (field === 'areaName') continue
    if (glandFields.has(field)) gland[field] = value
    else valve[field] = value
  }
  return { ...valve, gland }
}
