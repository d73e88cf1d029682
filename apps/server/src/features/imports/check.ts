import type { ColumnReading } from '@glandkeeper/contract/imports'
import { badRowsCsv } from './bad-rows.ts'
import { Judge, portionsOf } from './judge-file.ts'
import type { Running } from './running.ts'
import { Tally } from './tally.ts'

const ROWS_PER_NOTE = 1000

/** Judges every row of a file, writing none, and keeps what was found. */
export async function checkImport(running: Running): Promise<void> {
  const { file, store, clock } = running
  const judge = new Judge(file, clock())
  const tally = new Tally()
  let columns: ColumnReading[] = []
  let noted = 0
  for await (const portion of portionsOf(file)) {
    await running.goOn()
    columns = portion.columns
    if (portion.rows.length === 0) await running.note({ columns: JSON.stringify(columns) })
    else tally.add((await judge.judge(store.read, portion)).rows)
    if (tally.rowCount - noted < ROWS_PER_NOTE) continue
    noted = tally.rowCount
    await running.note(tally.counts)
  }
  await running.note({ ...(await foundBy(tally, running, columns)), step: 'checked', detail: '' })
}

/** What a judgement found, as it is kept: the counts, the first faults, and the file of bad rows. */
export async function foundBy(tally: Tally, { file }: Running, columns: readonly ColumnReading[]) {
  return {
    ...tally.counts,
    faults: JSON.stringify(tally.faults),
    badRows: await badRowsCsv(file.kind, columns, tally.badRows),
  }
}
