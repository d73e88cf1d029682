import type { ColumnReading, ImportKind, RowFault } from '@glandkeeper/contract/imports'
import type { Read } from '../../platform/store.ts'
import { Refusal } from '../../platform/problem.ts'
import type { BadRow } from './bad-rows.ts'
import type { JudgeContext, JudgedRow } from './judge.ts'
import { type HistoryPlan, judgeHistory } from './judge-history.ts'
import { judgeValves, type ValvePlan } from './judge-valves.ts'
import { type RawRow, rowsOf } from './read-file.ts'
import { readHeadings, refuseUnclearColumns } from './read-headings.ts'

/** The plans of one kind of file; the two are never mixed. */
export type Judged =
  | { readonly kind: 'valves'; readonly rows: readonly JudgedRow<ValvePlan>[] }
  | { readonly kind: 'history'; readonly rows: readonly JudgedRow<HistoryPlan>[] }

export interface FileToRead {
  readonly kind: ImportKind
  readonly content: Uint8Array
  /** What a person said of columns; for the others the heading decides. */
  readonly said: readonly ColumnReading[]
}

/**
 * Reads a file and judges every row against the register, writing nothing.
 * First the columns as they are read, then portions of judged rows.
 */
export async function* judgeFile(
  read: Read,
  site: { readonly id: string; readonly timeZone: string },
  file: FileToRead,
  now: Date,
): AsyncGenerator<{ columns: ColumnReading[] } | Judged> {
  let context: JudgeContext | null = null
  for await (const portion of rowsOf(file.content)) {
    let rows: readonly RawRow[] = portion
    if (context === null) {
      const columns = readHeadings(file.kind, portion[0]?.cells ?? [], file.said)
      // Shown before they are refused, so that a person can say how they are meant.
      yield { columns }
      refuseUnclearColumns(file.kind, columns)
      context = { read, siteId: site.id, timeZone: site.timeZone, columns, now, seen: new Map() }
      rows = portion.slice(1)
    }
    if (rows.length === 0) continue
    yield file.kind === 'valves'
      ? { kind: 'valves', rows: await judgeValves(context, rows) }
      : { kind: 'history', rows: await judgeHistory(context, rows) }
  }
  if (context === null) throw new Refusal('import/not-readable', 'the file is empty')
}

/** Counts of a check so far, and its bad rows. */
export class Tally {
  rowCount = 0
  goodCount = 0
  faultCount = 0
  readonly faults: RowFault[] = []
  readonly badRows: BadRow[] = []

  add(rows: readonly JudgedRow<unknown>[]): void {
    for (const { raw, faults } of rows) {
      this.rowCount += 1
      if (faults.length === 0) this.goodCount += 1
      else this.badRows.push({ raw, faults })
      this.faultCount += faults.length
      if (this.faults.length < FAULTS_SHOWN) this.faults.push(...faults)
    }
  }
}

/** The screen lists so many; the file of bad rows has all of them. */
const FAULTS_SHOWN = 500
