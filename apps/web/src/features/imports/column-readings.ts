import { headingOf, headingUnits, importColumns, type ImportColumn } from '@glandkeeper/contract/import-columns'
import type { ColumnReading, ImportKind } from '@glandkeeper/contract/imports'

/** What keeps a file from being read as it stands: needed columns that are not there, fields read twice. */
export function gapsIn(kind: ImportKind, readings: readonly ColumnReading[]): { missing: string[]; doubled: string[] } {
  const timesRead = (field: string) => readings.filter((reading) => reading.field === field).length
  const columns = importColumns[kind]
  return {
    missing: columns.filter((column) => column.required && timesRead(column.field) === 0).map(({ name }) => name),
    doubled: columns.filter(({ field }) => timesRead(field) > 1).map(({ name }) => name),
  }
}

/** The units a heading of this column may be in; empty where there is nothing to choose. */
export function unitsFor(column: ImportColumn | undefined): string[] {
  if (column?.reads.as !== 'quantity') return []
  const { unit: into } = column.reads
  const units = new Set(
    Object.values(headingUnits)
      .filter((known) => known.into === into)
      .map(({ unit }) => unit),
  )
  return units.size > 1 ? [...units] : []
}

/** Reads a heading as another field: a unit stays only where the new field can be in it. */
export function readAs(reading: ColumnReading, field: string | null, kind: ImportKind): ColumnReading {
  const units = unitsFor(importColumns[kind].find((column) => column.field === field))
  return { ...reading, field, unit: reading.unit !== null && units.includes(reading.unit) ? reading.unit : (units[0] ?? null) }
}

/** A file with one line: the headings this program writes itself. */
export function templateOf(kind: ImportKind): string {
  return `${importColumns[kind].map(headingOf).join(',')}\r\n`
}
