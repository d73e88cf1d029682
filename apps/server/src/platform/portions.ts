import { setTimeout as pause } from 'node:timers/promises'
import type { BulkTable } from './insert-rows.ts'
import type { Store } from './store.ts'

/**
 * Rows as a thread hands them over and a transaction takes them: JSON, read when it is written. A string goes over at
 * once; a hundred thousand rows as objects would hold up every request for a third of a second.
 */
export type Portion<Row> = string & { readonly rows?: readonly Row[] }

type KeptRow = Readonly<Record<string, string | number | boolean | null>>

/** So many rows are one transaction: short enough that no page waits for it beside its own work. */
const ROWS = 200

export function inPortions<Row>(rows: readonly Row[]): Portion<Row>[] {
  return Array.from({ length: Math.ceil(rows.length / ROWS) }, (_, index) =>
    JSON.stringify(rows.slice(index * ROWS, (index + 1) * ROWS)),
  )
}

/** Writes the rows of a plan, a transaction a portion, until it is cancelled. Half of the time is left to others. */
export async function writePortions(
  store: Store,
  table: BulkTable,
  { planId, portions }: { readonly planId: string; readonly portions: readonly Portion<unknown>[] },
  isCancelled: () => boolean,
): Promise<void> {
  for (const portion of portions) {
    if (isCancelled()) return
    const rows = (JSON.parse(portion) as KeptRow[]).map((row) => ({ planId, ...row }))
    const began = performance.now()
    await store.write((write) => write.insertRows(table, rows))
    await pause(performance.now() - began)
  }
}
