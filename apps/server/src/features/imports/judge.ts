import type { ColumnReading, ImportKind, RowFault } from '@glandkeeper/contract/imports'
import type { Fault } from '@glandkeeper/contract/problem'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { readCell } from './read-cell.ts'
import type { RawRow } from './read-file.ts'
import { columnOf } from './read-headings.ts'

/** A row read by its columns: what it gives, and what could not be read. */
export interface ReadRow {
  readonly raw: RawRow
  readonly given: Readonly<Record<string, string | number | boolean>>
  readonly faults: readonly RowFault[]
}

/** A row judged against the register: ready to be written as `plan`, or with faults. */
export interface JudgedRow<Plan> {
  readonly raw: RawRow
  readonly faults: readonly RowFault[]
  readonly plan: Plan | null
  /** Which of several rows of one valve, kind and time it is; null in a list of valves. */
  readonly occurrence: number | null
}

/** What judging needs to know besides the row. `seen` is filled from row to row, to find what a file says twice. */
export interface JudgeContext {
  readonly read: Read
  readonly siteId: string
  readonly timeZone: string
  readonly columns: readonly ColumnReading[]
  readonly now: Date
  readonly seen: Map<string, number>
}

export function readRow(kind: ImportKind, context: Pick<JudgeContext, 'columns' | 'timeZone'>, raw: RawRow): ReadRow {
  const given: Record<string, string | number | boolean> = {}
  const faults: RowFault[] = []
  if (raw.cells.length > context.columns.length)
    faults.push(rowFault(raw, '', '', `has ${raw.cells.length} cells, the headings have ${context.columns.length}`))
  context.columns.forEach((reading, index) => {
    const column = reading.field === null ? undefined : columnOf(kind, reading.field)
    if (!column) return
    const cell = raw.cells[index] ?? ''
    const result = readCell(cell, column, reading.unit, context.timeZone)
    if ('fault' in result) faults.push(rowFault(raw, reading.heading, cell, result.fault))
    else if (result.value !== null) given[column.field] = result.value
    else if (column.required) faults.push(rowFault(raw, reading.heading, '', 'must not be empty'))
  })
  return { raw, given, faults }
}

/** Faults of the contract, at the column each belongs to. Two of one place are one. */
export function faultsByColumn(
  kind: ImportKind,
  columns: readonly ColumnReading[],
  raw: RawRow,
  faults: readonly Fault[],
): RowFault[] {
  return faults.map(({ pointer, detail }) => {
    const field = pointer.split('/').at(-1) ?? ''
    const index = columns.findIndex((reading) => reading.field === field)
    const column = columns[index]?.heading ?? columnOf(kind, field)?.name ?? field
    return rowFault(raw, column, raw.cells[index] ?? '', detail)
  })
}

const MOST_OF_A_VALUE = 100

/** A fault shows enough of a cell to find it: a cell may hold a whole book. */
export function rowFault(raw: RawRow, column: string, value: string, detail: string): RowFault {
  return { row: raw.row, column, value: shortened(value), detail }
}

export function shortened(value: string): string {
  return value.slice(0, MOST_OF_A_VALUE)
}

/** The day at the site, as people there say it. */
export function retiredInWords(retiredAt: Date, timeZone: string): string {
  return `this valve was retired on ${dayAt(retiredAt, timeZone)}`
}
