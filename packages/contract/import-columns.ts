import type { z } from 'zod'
import {
  Cut,
  dropsPerMinute,
  LeakGrade,
  MissedReason,
  nutTurns,
  ringSection,
  screeningValue,
  StemFeel,
  threadRemaining,
} from './events.ts'
import {
  boxBore,
  boxDepth,
  FollowerKind,
  keepClear,
  leastEngagement,
  Lubrication,
  noseLength,
  stemDiameter,
  StudGrade,
} from './glands.ts'
import type { ImportKind } from './imports.ts'
import { gap } from './reserve.ts'
import { Access, Criticality, Phase, place, pressure, StemMovement, temperature, ValveKind } from './valves.ts'

/** A column of an import file. Its heading is `name`, or `name [unit]`; `alsoCalled` are other headings it answers to. */
export interface ImportColumn {
  readonly field: string
  readonly name: string
  readonly alsoCalled: readonly string[]
  readonly required?: true
  readonly reads:
    | { readonly as: 'text' | 'whole number' | 'yes or no' | 'moment' | 'kind of entry' }
    | { readonly as: 'word'; readonly words: readonly string[] }
    | {
        readonly as: 'quantity'
        readonly unit: 'mm' | '°C' | 'bar' | 'turn' | '1/min' | 'ppmv' | 'm'
        readonly schema: z.ZodType
      }
}

const text = { as: 'text' } as const
const whole = { as: 'whole number' } as const
const word = (of: { readonly options: readonly string[] }) => ({ as: 'word', words: of.options }) as const
const millimetres = (schema: z.ZodType) => ({ as: 'quantity', unit: 'mm', schema }) as const

const valveColumns: readonly ImportColumn[] = [
  { field: 'tag', name: 'tag', alsoCalled: ['valve', 'valve tag', 'valve no', 'tag no', 'item'], required: true, reads: text },
  { field: 'description', name: 'description', alsoCalled: ['seals', 'duty', 'text'], reads: text },
  { field: 'areaCode', name: 'area', alsoCalled: ['area code', 'plant area', 'unit'], required: true, reads: text },
  { field: 'areaName', name: 'area name', alsoCalled: [], reads: text },
  { field: 'walkPosition', name: 'walking position', alsoCalled: ['walk', 'stop', 'sequence'], reads: whole },
  { field: 'level', name: 'level', alsoCalled: ['floor'], reads: whole },
  { field: 'east', name: 'east', alsoCalled: ['metres east', 'x'], reads: { as: 'quantity', unit: 'm', schema: place('east') } },
  {
    field: 'north',
    name: 'north',
    alsoCalled: ['metres north', 'y'],
    reads: { as: 'quantity', unit: 'm', schema: place('north') },
  },
  { field: 'service', name: 'service', alsoCalled: ['medium'], required: true, reads: text },
  { field: 'fluid', name: 'fluid', alsoCalled: ['contents'], reads: text },
  { field: 'phase', name: 'phase', alsoCalled: ['state'], required: true, reads: word(Phase) },
  {
    field: 'temperature',
    name: 'temperature',
    alsoCalled: ['temp', 'operating temperature'],
    reads: { as: 'quantity', unit: '°C', schema: temperature },
  },
  {
    field: 'pressure',
    name: 'pressure',
    alsoCalled: ['operating pressure'],
    reads: { as: 'quantity', unit: 'bar', schema: pressure },
  },
  { field: 'valveKind', name: 'valve kind', alsoCalled: ['kind', 'type', 'valve type'], reads: word(ValveKind) },
  { field: 'stemMovement', name: 'stem movement', alsoCalled: ['stem'], reads: word(StemMovement) },
  { field: 'isolationBoundary', name: 'isolation boundary', alsoCalled: ['isolation', 'boundary'], reads: text },
  { field: 'isolatesOnLine', name: 'isolates on line', alsoCalled: ['isolable on line'], reads: { as: 'yes or no' } },
  { field: 'access', name: 'access', alsoCalled: [], reads: word(Access) },
  { field: 'criticality', name: 'criticality', alsoCalled: ['importance'], reads: word(Criticality) },
  { field: 'boxBore', name: 'box bore', alsoCalled: ['bore', 'stuffing box bore', 'box diameter'], reads: millimetres(boxBore) },
  {
    field: 'stemDiameter',
    name: 'stem diameter',
    alsoCalled: ['stem dia', 'spindle diameter'],
    reads: millimetres(stemDiameter),
  },
  { field: 'boxDepth', name: 'box depth', alsoCalled: ['depth', 'stuffing box depth'], reads: millimetres(boxDepth) },
  { field: 'followerKind', name: 'follower kind', alsoCalled: ['follower', 'gland kind'], reads: word(FollowerKind) },
  { field: 'noseLength', name: 'nose length', alsoCalled: ['nose', 'follower nose'], reads: millimetres(noseLength) },
  { field: 'leastEngagement', name: 'least engagement', alsoCalled: ['engagement'], reads: millimetres(leastEngagement) },
  { field: 'keepClear', name: 'keep clear', alsoCalled: ['least gap'], reads: millimetres(keepClear) },
  { field: 'studThread', name: 'stud thread', alsoCalled: ['thread', 'stud', 'gland stud'], reads: text },
  { field: 'studCount', name: 'studs', alsoCalled: ['stud count', 'number of studs'], reads: whole },
  { field: 'studGrade', name: 'stud grade', alsoCalled: ['grade'], reads: word(StudGrade) },
  { field: 'lubrication', name: 'lubrication', alsoCalled: ['lubricant'], reads: word(Lubrication) },
]

const historyColumns: readonly ImportColumn[] = [
  { field: 'tag', name: 'tag', alsoCalled: ['valve', 'valve tag', 'valve no', 'tag no', 'item'], required: true, reads: text },
  {
    field: 'takenAt',
    name: 'taken at',
    alsoCalled: ['date', 'when', 'day', 'time', 'date and time'],
    required: true,
    reads: { as: 'moment' },
  },
  { field: 'kind', name: 'what', alsoCalled: ['kind', 'entry', 'work', 'event'], required: true, reads: { as: 'kind of entry' } },
  { field: 'gapLeft', name: 'gap left', alsoCalled: ['gap', 'left gap', 'gap l'], reads: millimetres(gap) },
  { field: 'gapRight', name: 'gap right', alsoCalled: ['right gap', 'gap r'], reads: millimetres(gap) },
  {
    field: 'threadRemaining',
    name: 'thread remaining',
    alsoCalled: ['stud thread remaining'],
    reads: millimetres(threadRemaining),
  },
  {
    field: 'turnsLeft',
    name: 'turns left',
    alsoCalled: ['turns', 'nip', 'turns l'],
    reads: { as: 'quantity', unit: 'turn', schema: nutTurns },
  },
  {
    field: 'turnsRight',
    name: 'turns right',
    alsoCalled: ['turns r'],
    reads: { as: 'quantity', unit: 'turn', schema: nutTurns },
  },
  { field: 'leak', name: 'leak', alsoCalled: ['leak seen'], reads: word(LeakGrade) },
  { field: 'leakBefore', name: 'leak before', alsoCalled: [], reads: word(LeakGrade) },
  { field: 'leakAfter', name: 'leak after', alsoCalled: [], reads: word(LeakGrade) },
  { field: 'stem', name: 'stem', alsoCalled: ['stem feel'], reads: word(StemFeel) },
  {
    field: 'dropsPerMinute',
    name: 'drops per minute',
    alsoCalled: ['drops'],
    reads: { as: 'quantity', unit: '1/min', schema: dropsPerMinute },
  },
  {
    field: 'screeningValue',
    name: 'screening value',
    alsoCalled: ['screening', 'ppm'],
    reads: { as: 'quantity', unit: 'ppmv', schema: screeningValue },
  },
  {
    field: 'background',
    name: 'background',
    alsoCalled: ['background value'],
    reads: { as: 'quantity', unit: 'ppmv', schema: screeningValue },
  },
  { field: 'instrument', name: 'instrument', alsoCalled: ['meter'], reads: text },
  { field: 'family', name: 'packing family', alsoCalled: ['family', 'packing'], reads: text },
  { field: 'rings', name: 'rings', alsoCalled: ['number of rings'], reads: whole },
  { field: 'section', name: 'section', alsoCalled: ['packing section'], reads: millimetres(ringSection) },
  { field: 'cut', name: 'cut', alsoCalled: ['joint'], reads: word(Cut) },
  { field: 'proved', name: 'proved', alsoCalled: ['no overrun'], reads: { as: 'yes or no' } },
  { field: 'reason', name: 'reason missed', alsoCalled: ['reason'], reads: word(MissedReason) },
  { field: 'takenBy', name: 'by', alsoCalled: ['who', 'fitter', 'done by'], reads: text },
  { field: 'note', name: 'note', alsoCalled: ['remark', 'comment'], reads: text },
  /** Two nips at one time are two entries: the first and the second. The file of bad rows says which one a row is. */
  { field: 'occurrence', name: 'which of several alike', alsoCalled: ['occurrence'], reads: whole },
]

export const importColumns: Readonly<Record<ImportKind, readonly ImportColumn[]>> = {
  valves: valveColumns,
  history: historyColumns,
}

/** What the `what` column of a history may say, and the kind of entry it makes. */
export const entryWords: Readonly<Record<string, string>> = {
  reading: 'reading.taken',
  nip: 'gland.nipped',
  leak: 'leak.seen',
  repack: 'packing.renewed',
  'ring added': 'ring.added',
  missed: 'visit.missed',
}

/** The unit a heading may name for a length, pressure or temperature, and the unit it is read into. */
export const headingUnits: Readonly<Record<string, { readonly unit: string; readonly into: string }>> = {
  mm: { unit: 'mm', into: 'mm' },
  millimetre: { unit: 'mm', into: 'mm' },
  millimetres: { unit: 'mm', into: 'mm' },
  in: { unit: 'in', into: 'mm' },
  inch: { unit: 'in', into: 'mm' },
  inches: { unit: 'in', into: 'mm' },
  '"': { unit: 'in', into: 'mm' },
  '°c': { unit: '°C', into: '°C' },
  c: { unit: '°C', into: '°C' },
  '°f': { unit: '°F', into: '°C' },
  f: { unit: '°F', into: '°C' },
  bar: { unit: 'bar', into: 'bar' },
  psi: { unit: 'psi', into: 'bar' },
  m: { unit: 'm', into: 'm' },
  metre: { unit: 'm', into: 'm' },
  metres: { unit: 'm', into: 'm' },
  turn: { unit: 'turn', into: 'turn' },
  turns: { unit: 'turn', into: 'turn' },
  ppmv: { unit: 'ppmv', into: 'ppmv' },
  ppm: { unit: 'ppmv', into: 'ppmv' },
}

/** The heading this program writes itself. */
export function headingOf(column: ImportColumn): string {
  return column.reads.as === 'quantity' && column.reads.unit !== '1/min' ? `${column.name} [${column.reads.unit}]` : column.name
}
