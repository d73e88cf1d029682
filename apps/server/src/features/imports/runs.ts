import type { FastifyBaseLogger } from 'fastify'
import type { ColumnReading, ImportKind, ImportStep } from '@glandkeeper/contract/imports'
import type { Clock } from '../../platform/clock.ts'
import { refusalFor } from '../../platform/problem.ts'
import type { Store } from '../../platform/store.ts'
import type { Prisma } from '../../generated/sqlite/client.ts'
import { badRowsCsv } from './bad-rows.ts'
import { type FileToRead, judgeFile, Tally } from './check.ts'
import type { HistoryPlan } from './judge-history.ts'
import { writeHistory } from './write-history.ts'
import { writeValves } from './write-valves.ts'

type Progress = Omit<Prisma.ImportRunUpdateInput, 'step'> & { step?: ImportStep }

/** Runs imports in the background, one file at a time, so that rounds being entered meanwhile are not held up. */
export class ImportRuns {
  readonly #store: Store
  readonly #clock: Clock
  readonly #log: Pick<FastifyBaseLogger, 'error'>
  readonly #cancelled = new Set<string>()
  #tail: Promise<void> = Promise.resolve()
  #stopping = false

  constructor(store: Store, clock: Clock, log: Pick<FastifyBaseLogger, 'error'>) {
    this.#store = store
    this.#clock = clock
    this.#log = log
  }

  /** Checks a file in its turn. */
  check(importId: string): void {
    this.#after(importId, () => this.#check(importId))
  }

  /** Writes the good rows of a checked file in its turn. */
  write(importId: string): void {
    this.#after(importId, () => this.#write(importId))
  }

  cancel(importId: string): void {
    this.#cancelled.add(importId)
  }

  /** Goes on with what a stop or a power cut left unfinished. Rows written already are found and not written twice. */
  async resume(): Promise<void> {
    const unfinished = await this.#store.read.importRun.findMany({
      where: { step: { in: ['checking', 'writing'] } },
      orderBy: { startedAt: 'asc' },
      select: { id: true, step: true },
    })
    for (const { id, step } of unfinished) this.#after(id, () => (step === 'checking' ? this.#check(id) : this.#write(id)))
  }

  /** Lets the portion at hand end and starts no other: the next start goes on from there. */
  async stop(): Promise<void> {
    this.#stopping = true
    await this.#tail
  }

  /** Resolves when everything asked for so far has ended. */
  idle(): Promise<void> {
    return this.#tail
  }

  #after(importId: string, work: () => Promise<void>): void {
    this.#tail = this.#tail.then(work).catch(async (error: unknown) => {
      const refusal = refusalFor(error)
      if (!refusal) this.#log.error(error)
      const unreadable = refusal?.code === 'import/not-readable'
      await this.#note(importId, {
        step: unreadable ? 'unreadable' : 'failed',
        detail: refusal?.detail ?? refusal?.code ?? 'an unexpected fault; the log of the server has it',
        finishedAt: this.#clock(),
      })
    })
  }

  async #check(importId: string): Promise<void> {
    const { run, site, file } = await this.#load(importId)
    const tally = new Tally()
    let columns: ColumnReading[] = []
    for await (const step of judgeFile(this.#store.read, site, file, this.#clock())) {
      if (this.#stopping || (await this.#isCancelled(importId))) return
      if ('columns' in step) {
        columns = step.columns
        await this.#note(importId, { columns: JSON.stringify(columns) })
      } else {
        tally.add(step.rows)
        await this.#noteSometimes(importId, tally.rowCount, countsOf(tally))
      }
    }
    const badRows = Buffer.from(
      badRowsCsv(
        columns.map((column) => column.heading),
        tally.badRows,
      ),
    )
    await this.#note(run.id, { ...countsOf(tally), faults: JSON.stringify(tally.faults), badRows, step: 'checked', detail: '' })
  }

  async #write(importId: string): Promise<void> {
    const { run, site, file } = await this.#load(importId)
    const by = { siteId: run.siteId, personId: run.personId }
    const tally = new Tally()
    const history: HistoryPlan[] = []
    let columns: ColumnReading[] = []
    let done = 0
    let already = 0
    const stopped = async () =>
      this.#stopping || (await this.#isCancelled(importId, `${done} rows were written; bring the same file in again to go on`))
    const portion = async (rows: number, unchanged: number, work: Parameters<Store['write']>[0]) => {
      await this.#store.write(async (write) => {
        await work(write)
        await write.importRun.update({
          where: { id: importId },
          data: { doneCount: done + rows, alreadyCount: already + unchanged },
        })
      })
      done += rows
      already += unchanged
    }
    for await (const step of judgeFile(this.#store.read, site, file, this.#clock())) {
      if (await stopped()) return
      if ('columns' in step) columns = step.columns
      else {
        tally.add(step.rows)
        if (step.kind === 'history') history.push(...step.rows.flatMap((row) => row.plan ?? []))
        else {
          const plans = step.rows.flatMap((row) => row.plan ?? [])
          await portion(plans.length, plans.filter((plan) => plan.unchanged).length, (write) =>
            writeValves(write, by, plans, this.#clock()),
          )
        }
      }
    }
    for (const plans of wholeValves(history)) {
      if (await stopped()) return
      await portion(plans.length, plans.filter((plan) => plan.unchanged).length, (write) =>
        writeHistory(write, by, plans, this.#clock()),
      )
    }
    const badRows = Buffer.from(
      badRowsCsv(
        columns.map((column) => column.heading),
        tally.badRows,
      ),
    )
    await this.#note(importId, {
      ...countsOf(tally),
      doneCount: done,
      alreadyCount: already,
      faults: JSON.stringify(tally.faults),
      badRows,
      step: 'done',
      finishedAt: this.#clock(),
    })
  }

  async #load(importId: string) {
    const run = await this.#store.read.importRun.findUniqueOrThrow({ where: { id: importId }, include: { site: true } })
    const file: FileToRead = {
      kind: run.kind as ImportKind,
      content: run.content,
      said: JSON.parse(run.columns) as ColumnReading[],
    }
    return { run, site: run.site, file }
  }

  async #isCancelled(importId: string, detail = 'nothing was written'): Promise<boolean> {
    if (!this.#cancelled.delete(importId)) return false
    await this.#note(importId, { step: 'cancelled', detail, finishedAt: this.#clock() })
    return true
  }

  async #noteSometimes(importId: string, rows: number, progress: Progress): Promise<void> {
    if (rows % 1000 < 200) await this.#note(importId, progress)
  }

  async #note(importId: string, progress: Progress): Promise<void> {
    await this.#store.write((write) => write.importRun.update({ where: { id: importId }, data: progress }))
  }
}

function countsOf(tally: Tally): Progress {
  return { rowCount: tally.rowCount, goodCount: tally.goodCount, badCount: tally.badRows.length, faultCount: tally.faultCount }
}

/** Portions in which a valve's rows stand together, so that its state is made once and with its events. */
function* wholeValves(plans: readonly HistoryPlan[], least = 200): Generator<HistoryPlan[]> {
  let portion: HistoryPlan[] = []
  const byValve = new Map<string, HistoryPlan[]>()
  for (const plan of plans) {
    const ofOneValve = byValve.get(plan.event.valveId)
    if (ofOneValve) ofOneValve.push(plan)
    else byValve.set(plan.event.valveId, [plan])
  }
  for (const ofOneValve of byValve.values()) {
    for (let at = 0; at < ofOneValve.length; at += MOST_IN_A_PORTION) {
      portion.push(...ofOneValve.slice(at, at + MOST_IN_A_PORTION))
      if (portion.length < least) continue
      yield portion
      portion = []
    }
  }
  if (portion.length > 0) yield portion
}

/** Eleven columns an event: stays well under the number of values one statement may carry. */
const MOST_IN_A_PORTION = 500
