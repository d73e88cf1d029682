import { setImmediate as nextTurn } from 'node:timers/promises'
import type { ColumnReading } from '@glandkeeper/contract/imports'
import type { Write } from '../../platform/store.ts'
import { foundBy } from './check.ts'
import { Judge, type Judged, type Portion, portionsOf } from './judge-file.ts'
import type { JudgedRow } from './judge.ts'
import type { HistoryPlan } from './judge-history.ts'
import type { ValvePlan } from './judge-valves.ts'
import type { Progress, Running } from './running.ts'
import { Tally } from './tally.ts'
import { wholeValves, writeHistory } from './write-history.ts'
import { writeValves } from './write-valves.ts'

/** A whole file of so many rows is one transaction; a longer one would make every other entry wait too long. */
const MOST_AT_ONCE = 1000
const ROWS_PER_NOTE = 1000

/** A whole file has a bad row that it did not have when it was checked. */
class FaultsFound extends Error {}

/** Writes a checked file: its good rows, or all of it or nothing. */
export async function writeImport(running: Running): Promise<void> {
  const isValves = running.file.kind === 'valves'
  if (running.mode !== 'whole file')
    return isValves ? writeValveFile(running, false) : writePlans(running, await judgeAll(running))
  const first = await judgeAll(running)
  if (first.tally.badRows.length > 0) return giveBack(running, first)
  try {
    if (first.kept !== null) await writeAtOnce(running, first, first.kept)
    else if (isValves) await writeValveFile(running, true)
    else await writePlans(running, first)
  } catch (error) {
    if (!(error instanceof FaultsFound)) throw error
    await giveBack(running, await judgeAll(running))
  }
}

interface JudgedFile {
  readonly columns: readonly ColumnReading[]
  readonly tally: Tally
  readonly plans: readonly HistoryPlan[]
  /** The rows themselves, while they are few enough for one transaction. */
  readonly kept: readonly Portion[] | null
}

async function judgeAll(running: Running): Promise<JudgedFile> {
  const judge = new Judge(running.file, running.clock())
  const tally = new Tally()
  const plans: HistoryPlan[] = []
  let kept: Portion[] | null = []
  let columns: ColumnReading[] = []
  let noted = 0
  for await (const portion of portionsOf(running.file)) {
    await running.goOn()
    columns = portion.columns
    const judged = await judge.judge(running.store.read, portion)
    tally.add(judged.rows)
    if (judged.kind === 'history') plans.push(...plansOf(judged.rows))
    kept = tally.rowCount > MOST_AT_ONCE ? null : kept
    kept?.push(portion)
    if (tally.rowCount - noted < ROWS_PER_NOTE) continue
    noted = tally.rowCount
    await running.note({})
  }
  return { columns, tally, plans, kept }
}

/** Judged again inside the transaction, all of it before the first row is written, and ended in it too. */
async function writeAtOnce(running: Running, first: JudgedFile, portions: readonly Portion[]): Promise<void> {
  const found = await foundBy(first.tally, running, first.columns)
  await running.portion(
    async (write) => {
      const judge = new Judge(running.file, running.clock())
      const judged: Judged[] = []
      for (const portion of portions) {
        judged.push(await judge.judge(write, portion))
        await nextTurn()
      }
      if (judged.some(({ rows }) => rows.some((row) => row.plan === null))) throw new FaultsFound()
      let already = 0
      for (const { kind, rows } of judged) {
        if (kind === 'valves') already += await valvesIn(write, running, plansOf(rows))
        // So that others are answered meanwhile; only other writes wait.
        await nextTurn()
      }
      const history = judged.flatMap((portion) => (portion.kind === 'history' ? plansOf(portion.rows) : []))
      for (const plans of wholeValves(history)) {
        already += await writeHistory(write, running.by, plans, running.clock())
        await nextTurn()
      }
      return { done: first.tally.rowCount, already }
    },
    ended(running, found),
  )
}

/** Valves are judged inside the transaction that writes them: what was saved since is the row they change. */
async function writeValveFile(running: Running, isWhole: boolean): Promise<void> {
  const judge = new Judge(running.file, running.clock())
  const tally = new Tally()
  let columns: ColumnReading[] = []
  for await (const portion of portionsOf(running.file)) {
    columns = portion.columns
    if (portion.rows.length === 0) continue
    const { rows } = await running.portion(async (write) => {
      const judged = await judge.judge(write, portion)
      if (isWhole && judged.rows.some((row) => row.plan === null)) throw new FaultsFound()
      const plans = judged.kind === 'valves' ? plansOf(judged.rows) : []
      return { rows: judged.rows, done: plans.length, already: await valvesIn(write, running, plans) }
    })
    tally.add(rows)
  }
  await running.note(ended(running, await foundBy(tally, running, columns)))
}

async function writePlans(running: Running, { plans, tally, columns }: JudgedFile): Promise<void> {
  for (const portion of wholeValves(plans)) {
    await running.portion(async (write) => ({
      done: portion.length,
      already: await writeHistory(write, running.by, portion, running.clock()),
    }))
  }
  await running.note(ended(running, await foundBy(tally, running, columns)))
}

async function giveBack(running: Running, { tally, columns }: JudgedFile): Promise<void> {
  const found = await foundBy(tally, running, columns)
  const changed = 'the register changed since the check'
  if (running.doneCount === 0) return running.note({ ...found, step: 'checked', detail: `${changed}; nothing was written` })
  const detail = `${changed}; ${running.doneCount} rows were written before, and stay`
  await running.note({ ...found, step: 'failed', detail, finishedAt: running.clock() })
}

async function valvesIn(write: Write, running: Running, plans: readonly ValvePlan[]): Promise<number> {
  await writeValves(write, running.by, plans, running.clock())
  return plans.filter((plan) => plan.unchanged).length
}

function plansOf<Plan>(rows: readonly JudgedRow<Plan>[]): Plan[] {
  return rows.flatMap((row) => (row.plan === null ? [] : [row.plan]))
}

function ended(running: Running, found: Progress): Progress {
  return { ...found, step: 'done', detail: '', finishedAt: running.clock() }
}
