import type { FastifyBaseLogger } from 'fastify'
import type { Clock } from '../../platform/clock.ts'
import { refusalFor } from '../../platform/problem.ts'
import type { Store } from '../../platform/store.ts'
import type { Prisma } from '../../generated/sqlite/client.ts'
import { checkImport } from './check.ts'
import { patiently } from './patience.ts'
import { Interruption, Running, type Surroundings } from './running.ts'
import { writeImport } from './write.ts'

/** A run that no server has touched for so long was left alone. */
const LEFT_ALONE_MS = 60_000
const NEVER_TOUCHED = new Date(0)

type Step = 'checking' | 'writing'

/** Runs imports in the background, one file at a time, so that rounds being entered meanwhile are not held up. */
export class ImportRuns {
  readonly #store: Store
  readonly #clock: Clock
  readonly #log: Pick<FastifyBaseLogger, 'error'>
  readonly #onWritten: (siteId: string) => void
  readonly #around: Surroundings
  /** The runs of this server, the one at work and those that wait. */
  readonly #ours = new Set<string>()
  #tail: Promise<void> = Promise.resolve()
  #stopping = false
  #lookAgain: NodeJS.Timeout | undefined

  /** @param onWritten told the site once rows of a file have been written */
  constructor(store: Store, clock: Clock, log: Pick<FastifyBaseLogger, 'error'>, onWritten: (siteId: string) => void = () => {}) {
    this.#store = store
    this.#clock = clock
    this.#log = log
    this.#onWritten = onWritten
    this.#around = { store, clock, isStopping: () => this.#stopping, ours: () => [...this.#ours] }
  }

  /** Checks a file in its turn. */
  check(importId: string): void {
    this.#inTurn(importId, 'checking')
  }

  /** Writes the good rows of a checked file in its turn. */
  write(importId: string): void {
    this.#inTurn(importId, 'writing')
  }

  /**
   * Goes on with what a stop or a power cut left unfinished. Rows written already are found and not written twice.
   * SQLite has one server; on PostgreSQL another may be at it, and a run is taken on when it was left alone.
   */
  async resume(): Promise<void> {
    const unfinished = await this.#store.read.importRun.findMany({
      where: { step: { in: ['checking', 'writing'] }, id: { notIn: [...this.#ours] } },
      orderBy: { startedAt: 'asc' },
      select: { id: true, step: true },
    })
    let left = 0
    for (const { id, step } of unfinished) {
      if (this.#store.provider === 'sqlite' || (await this.#takeOver(id))) this.#inTurn(id, step as Step)
      else left += 1
    }
    if (left > 0 && !this.#stopping) this.#lookAgain = setTimeout(() => void this.#resumeLater(), LEFT_ALONE_MS).unref()
  }

  /** Lets the portion at hand end and starts no other: the next start goes on from there. */
  async stop(): Promise<void> {
    this.#stopping = true
    clearTimeout(this.#lookAgain)
    await this.#tail
  }

  /** Resolves when everything asked for so far has ended. */
  idle(): Promise<void> {
    return this.#tail
  }

  #inTurn(importId: string, step: Step): void {
    this.#ours.add(importId)
    // Never rejects: one run that fails must not take those behind it along.
    this.#tail = this.#tail.then(() => this.#work(importId, step))
  }

  async #work(importId: string, step: Step): Promise<void> {
    let running: Running | null = null
    try {
      running = await Running.load(this.#around, importId, step)
      if (running !== null) await (step === 'checking' ? checkImport(running) : writeImport(running))
      if (running !== null && step === 'writing') this.#onWritten(running.by.siteId)
    } catch (error) {
      await this.#noteEnd(importId, step, this.#endOf(error, running))
    } finally {
      this.#ours.delete(importId)
    }
  }

  /** What becomes of a run whose work did not come to its end. */
  #endOf(error: unknown, running: Running | null): Prisma.ImportRunUpdateManyMutationInput {
    const finishedAt = this.#clock()
    if (error instanceof Interruption) {
      if (error.why !== 'cancelled') return { ...(error.why === 'stopping' && { touchedAt: NEVER_TOUCHED }) }
      const done = running?.doneCount ?? 0
      const detail = done === 0 ? 'nothing was written' : `${done} rows were written; bring the same file in again to go on`
      return { step: 'cancelled', detail, finishedAt }
    }
    const refusal = refusalFor(error)
    if (!refusal) this.#log.error(error)
    return {
      step: refusal?.code === 'import/not-readable' ? 'unreadable' : 'failed',
      detail: refusal?.detail ?? refusal?.code ?? 'an unexpected fault; the log of the server has it',
      finishedAt,
    }
  }

  async #noteEnd(importId: string, step: Step, data: Prisma.ImportRunUpdateManyMutationInput): Promise<void> {
    try {
      await patiently(() => this.#store.write((write) => write.importRun.updateMany({ where: { id: importId, step }, data })))
    } catch (error) {
      // The run stays at its step, and the next start goes on with it.
      this.#log.error(error)
    }
  }

  async #takeOver(id: string): Promise<boolean> {
    const now = this.#clock()
    const before = new Date(now.getTime() - LEFT_ALONE_MS)
    const { count } = await this.#store.write((write) =>
      write.importRun.updateMany({ where: { id, touchedAt: { lt: before } }, data: { touchedAt: now } }),
    )
    return count > 0
  }

  async #resumeLater(): Promise<void> {
    try {
      await this.resume()
    } catch (error) {
      this.#log.error(error)
    }
  }
}
