import { stringify } from 'csv-stringify/sync'

/** Rows of a CSV file as spreadsheets open it; pieces of one file follow each other, the first with its headings. */
export function csvOf(rows: readonly (readonly (string | number)[])[], headings: readonly string[] | null): string {
  const lines = rows.map((row) => row.map((cell) => (typeof cell === 'number' ? String(cell) : withoutFormula(cell))))
  return (headings === null ? '' : stringify([headings], { bom: true })) + stringify(lines)
}

/**
 * A spreadsheet runs a cell that begins like a formula; an apostrophe keeps it text.
 *
 * @example withoutFormula('=1+1') // → "'=1+1"
 */
function withoutFormula(cell: string): string {
  return /^[=@+\-\t\r\n]/.test(cell) ? `'${cell}` : cell
}
