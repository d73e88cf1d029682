import { setImmediate as nextTurn } from 'node:timers/promises'
import { stringify } from 'csv-stringify/sync'
import { importColumns } from '@glandkeeper/contract/import-columns'
import type { ColumnReading, ImportKind, RowFault } from '@glandkeeper/contract/imports'
import type { RawRow } from './read-file.ts'

export interface BadRow {
  readonly raw: RawRow
  readonly faults: readonly RowFault[]
  /** Which of several rows of one valve, kind and time it is; null where that could not be read. */
  readonly occurrence: number | null
}

const WHY = 'why this row was not read'
const ROWS_PER_TURN = 500
const OCCURRENCE = importColumns.history.find((column) => column.field === 'occurrence')?.name ?? ''

/** The bad rows as they came, with a column of reasons: mend them and bring this file in. Gives way between portions. */
export async function badRowsCsv(
  kind: ImportKind,
  columns: readonly ColumnReading[],
  rows: readonly BadRow[],
): Promise<Buffer<ArrayBuffer>> {
  // What is written anew at the end, a file of bad rows brought in again has already.
  const keep = columns.flatMap(({ heading, field }, index) => (heading === WHY || field === 'occurrence' ? [] : [index]))
  const hasOccurrence = kind === 'history'
  const headings = [...keep.map((index) => columns[index]?.heading ?? ''), ...(hasOccurrence ? [OCCURRENCE] : []), WHY]
  const lines = (some: readonly BadRow[]) =>
    some.map(({ raw, faults, occurrence }) => [
      ...keep.map((index) => raw.cells[index] ?? ''),
      ...(hasOccurrence ? [String(occurrence ?? '')] : []),
      faults.map(reason).join('; '),
    ])
  const parts = [stringify([headings.map(withoutFormula)], { bom: true })]
  for (let at = 0; at < rows.length; at += ROWS_PER_TURN) {
    parts.push(stringify(lines(rows.slice(at, at + ROWS_PER_TURN)).map((cells) => cells.map(withoutFormula))))
    await nextTurn()
  }
  return Buffer.from(parts.join(''))
}

function reason({ column, detail }: RowFault): string {
  return column === '' ? detail : `${column}: ${detail}`
}

/** A spreadsheet runs a cell that begins like a formula; an apostrophe keeps it text. Negative numbers stay numbers. */
function withoutFormula(cell: string): string {
  return /^[=@]|^[+-](?![\d.,]+$)/.test(cell) ? `'${cell}` : cell
}
