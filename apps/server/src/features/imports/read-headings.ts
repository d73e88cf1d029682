import { headingUnits, type ImportColumn, importColumns } from '@glandkeeper/contract/import-columns'
import type { ColumnReading, ImportKind } from '@glandkeeper/contract/imports'
import { Refusal } from '../../platform/problem.ts'

/** How each column of a file is read: as a person has said, or else by its heading. */
export function readHeadings(
  kind: ImportKind,
  headings: readonly string[],
  said: readonly ColumnReading[] = [],
): ColumnReading[] {
  return headings.map((heading, index) => {
    // Two columns may share a heading: each is what was said of it in its place.
    const inPlace = said[index]?.heading === heading ? said[index] : undefined
    return inPlace ?? said.find((reading) => reading.heading === heading) ?? readingOf(kind, heading)
  })
}

/** What a person says of a column must be a field there is. */
export function refuseUnknownFields(kind: ImportKind, columns: readonly ColumnReading[]): void {
  const faults = columns.flatMap(({ field }, index) =>
    field === null || columnOf(kind, field)
      ? []
      : [{ pointer: `#/columns/${index}/field`, detail: `no column is called ${field}` }],
  )
  if (faults.length > 0) throw new Refusal('request/invalid', faults[0]?.detail, faults)
}

/** A file needs each required column, and no two columns of one meaning. */
export function refuseUnclearColumns(kind: ImportKind, columns: readonly ColumnReading[]): void {
  const fields = columns.flatMap((column) => column.field ?? [])
  const twice = fields.find((field, index) => fields.indexOf(field) !== index)
  if (twice !== undefined)
    throw new Refusal('import/not-readable', `two columns are read as ${columnOf(kind, twice)?.name ?? twice}: choose one`)
  const missing = importColumns[kind].filter((column) => column.required && !fields.includes(column.field))
  if (missing.length > 0)
    throw new Refusal('import/not-readable', `no column is read as: ${missing.map((column) => column.name).join(', ')}`)
}

export function columnOf(kind: ImportKind, field: string): ImportColumn | undefined {
  return importColumns[kind].find((column) => column.field === field)
}

function readingOf(kind: ImportKind, heading: string): ColumnReading {
  const { name, unit } = partsOf(heading)
  const column = importColumns[kind].find((candidate) =>
    [candidate.name, ...candidate.alsoCalled].some((known) => folded(known) === name),
  )
  if (!column) return { heading, field: null, unit: null }
  if (column.reads.as !== 'quantity') return { heading, field: column.field, unit: null }
  const named = unit === null ? undefined : headingUnits[unit]
  // A unit nobody can read is shown as it is written, and every figure under it is a fault.
  return { heading, field: column.field, unit: named?.unit ?? unit ?? column.reads.unit }
}

/** `Box bore [in]`, `Box bore (in)` and `box_bore in` are the same heading with the same unit. */
function partsOf(heading: string): { name: string; unit: string | null } {
  const bracketed = /^(.*?)\s*[[(]\s*([^\])]+?)\s*[\])]\s*$/.exec(heading)
  if (bracketed) return { name: folded(bracketed[1] ?? ''), unit: (bracketed[2] ?? '').toLowerCase() }
  const trailing = /^(.*\S)[\s_,]+(mm|in|inch|inches|psi|bar)$/i.exec(heading)
  if (trailing) return { name: folded(trailing[1] ?? ''), unit: (trailing[2] ?? '').toLowerCase() }
  return { name: folded(heading), unit: null }
}

function folded(heading: string): string {
  return heading
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, ' ')
    .trim()
}
