import type { ColumnReading, ImportKind } from '@glandkeeper/contract/imports'
import type { Read } from '../../platform/store.ts'
import { Refusal } from '../../platform/problem.ts'
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
  readonly site: { readonly id: string; readonly timeZone: string }
}

/** Some rows of a file, and how its columns are read. */
export interface Portion {
  readonly columns: ColumnReading[]
  readonly rows: readonly RawRow[]
}

/** The rows of a file, in portions. The first portion has no rows: it shows the columns before they may be refused. */
export async function* portionsOf(file: FileToRead): AsyncGenerator<Portion> {
  let columns: ColumnReading[] | null = null
  for await (const portion of rowsOf(file.content)) {
    let rows: readonly RawRow[] = portion
    if (columns === null) {
      columns = readHeadings(file.kind, portion[0]?.cells ?? [], file.said)
      // Shown before they are refused, so that a person can say how they are meant.
      yield { columns, rows: [] }
      refuseUnclearColumns(file.kind, columns)
      rows = portion.slice(1)
    }
    if (rows.length > 0) yield { columns, rows }
  }
  if (columns === null) throw new Refusal('import/not-readable', 'the file is empty')
}

/** Judges the portions of one file in their order; what a file says twice is found across them. */
export class Judge {
  readonly #file: FileToRead
  readonly #now: Date
  readonly #seen = new Map<string, number>()

  constructor(file: FileToRead, now: Date) {
    this.#file = file
    this.#now = now
  }

  /** Judges rows against the register as `read` sees it, writing nothing. */
  async judge(read: Read, { columns, rows }: Portion): Promise<Judged> {
    const { kind, site } = this.#file
    const context: JudgeContext = { read, siteId: site.id, timeZone: site.timeZone, columns, now: this.#now, seen: this.#seen }
    return kind === 'valves'
      ? { kind, rows: await judgeValves(context, rows) }
      : { kind, rows: await judgeHistory(context, rows) }
  }
}
