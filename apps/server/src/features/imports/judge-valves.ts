import { AreaInput } from '@glandkeeper/contract/areas'
import type { RowFault } from '@glandkeeper/contract/imports'
import { type Fault, faultsOf } from '@glandkeeper/contract/problem'
import { ValveInput } from '@glandkeeper/contract/valves'
import { canonicalJson } from '../../platform/chain.ts'
import { glandFaults, presentInput } from '../valves/index.ts'
import { faultsByColumn, type JudgeContext, type JudgedRow, readRow, type ReadRow, retiredInWords, rowFault } from './judge.ts'
import type { RawRow } from './read-file.ts'

export interface ValvePlan {
  readonly input: ValveInput
  /** The valve as the register has it, to be changed; null: a new one. */
  readonly existing: { readonly valveId: string; readonly revision: number; readonly input: ValveInput } | null
  readonly unchanged: boolean
  readonly areaName: string | null
}

type ValveRow = Parameters<typeof presentInput>[0]

const glandFields = new Set(Object.keys(ValveInput.shape.gland.shape))

/** What a new valve is where the file says nothing: the cautious answer, or not known. */
const untold = {
  description: '',
  level: 0,
  east: null,
  north: null,
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

/**
 * Judges rows of a valve list. A tag the register knows is changed in the columns the file has, and in no other.
 * The same rows may be judged again, as when a transaction is tried again.
 */
export async function judgeValves(context: JudgeContext, rows: readonly RawRow[]): Promise<JudgedRow<ValvePlan>[]> {
  const read = rows.map((raw) => readRow('valves', context, raw))
  const tags = [...new Set(read.map((row) => String(row.given['tag'] ?? '')))]
  const known = await context.read.valve.findMany({
    where: { siteId: context.siteId, tag: { in: tags } },
    include: { area: true },
  })
  const byTag = new Map(known.map((row) => [row.tag, row]))
  return read.map((row) => judgeValve(context, row, byTag.get(String(row.given['tag']))))
}

function judgeValve(context: JudgeContext, row: ReadRow, known: ValveRow | undefined): JudgedRow<ValvePlan> {
  const existing = known ? { valveId: known.id, revision: known.revision, input: presentInput(known) } : null
  const parsed = ValveInput.safeParse(asValve(row, existing?.input))
  const areaName = AreaInput.shape.name.optional().safeParse(row.given['areaName'])
  const contractFaults: Fault[] = parsed.success ? glandFaults(parsed.data.gland) : faultsOf(parsed.error)
  if (!areaName.success) contractFaults.push(...faultsOf(areaName.error, '#/areaName'))
  if (known?.retiredAt) contractFaults.push({ pointer: '#/tag', detail: retiredInWords(known.retiredAt, context.timeZone) })
  const unread = new Set(row.faults.map((fault) => fault.column))
  const faults: RowFault[] = [
    ...row.faults,
    // What could not be read at all was said already; that it is also missing need not be said again.
    ...faultsByColumn('valves', context.columns, row.raw, contractFaults).filter((fault) => !unread.has(fault.column)),
    ...saidTwice(context, row),
  ]
  if (!parsed.success || faults.length > 0) return { raw: row.raw, faults, plan: null, occurrence: null }
  const input = parsed.data
  const unchanged = existing !== null && canonicalJson(existing.input) === canonicalJson(input)
  const plan = { input, existing, unchanged, areaName: areaName.data ?? null }
  return { raw: row.raw, faults, plan, occurrence: null }
}

function saidTwice({ seen }: JudgeContext, { given, raw }: ReadRow): RowFault[] {
  const tag = String(given['tag'] ?? '')
  const first = seen.get(tag) ?? raw.row
  seen.set(tag, first)
  return tag === '' || first === raw.row ? [] : [rowFault(raw, 'tag', tag, `this tag is in row ${first} already`)]
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
