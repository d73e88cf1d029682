import { stringify } from 'csv-stringify/sync'
import type { RowFault } from '@glandkeeper/contract/imports'
import type { RawRow } from './read-file.ts'

export interface BadRow {
  readonly raw: RawRow
  readonly faults: readonly RowFault[]
}

const WHY = 'why this row was not read'

/** The bad rows as they came, with a column of reasons: mend them and bring this file in. */
export function badRowsCsv(headings: readonly string[], rows: readonly BadRow[]): string {
  // A file of bad rows brought in again has the column of reasons already.
  const keep = headings.flatMap((heading, index) => (heading === WHY ? [] : [index]))
  const lines = rows.map(({ raw, faults }) => [
    ...keep.map((index) => withoutFormula(raw.cells[index] ?? '')),
    faults.map(reason).join('; '),
  ])
  return stringify([[...keep.map((index) => headings[index] ?? ''), WHY], ...lines], { bom: true })
}

function reason({ column, detail }: RowFault): string {
  return column === '' ? detail : `${column}: ${detail}`
}

/** A spreadsheet runs a cell that begins like a formula; an apostrophe keeps it text. Negative numbers stay numbers. */
function withoutFormula(cell: string): string {
  return /^[=@]|^[+-](?![\d.,]+$)/.test(cell) ? `'${cell}` : cell
}
