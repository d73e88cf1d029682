import { setImmediate as nextTurn } from 'node:timers/promises'
import type { ColumnReading, ImportKind, ImportStep } from '@glandkeeper/contract/imports'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { Clock } from '../../platform/clock.ts'
import type { Store, Write } from '../../platform/store.ts'
import type { FileToRead } from './judge-file.ts'
import { patiently } from './patience.ts'

export type Progress = Omit<Prisma.ImportRunUpdateManyMutationInput, 'step' | 'touchedAt'> & { step?: ImportStep }

/** Ends the work at a run early: a person wants it, the server stops, or another server has taken the run on. */
export class Interruption extends Error {
  readonly why: 'cancelled' | 'stopping' | 'moved on'
  constructor(why: Interruption['why']) {
    super(`the import was interrupted: ${why}`)
    this.why = why
  }
}

export interface Surroundings {
  readonly store: Store
  readonly clock: Clock
  readonly isStopping: () => boolean
  /** All runs of this server, those that wait for their turn too: no other server may think them left alone. */
  readonly ours: () => string[]
}

/** One import being worked on: its file, its row in the register, and how far it has got. */
export class Running {
  readonly store: Store
  readonly clock: Clock
  readonly file: FileToRead
  readonly mode: string | null
  readonly by: { readonly siteId: string; readonly personId: string }
  readonly #id: string
  readonly #step: ImportStep
  readonly #around: Surroundings
  readonly #doneBefore: number
  #done = 0
  #already = 0

  private constructor(around: Surroundings, step: ImportStep, row: LoadedRow) {
    this.store = around.store
    this.clock = around.clock
    this.#around = around
    this.#id = row.id
    this.#step = step
    this.mode = row.mode
    this.by = { siteId: row.siteId, personId: row.personId }
    this.file = {
      kind: row.kind as ImportKind,
      content: row.content,
      said: JSON.parse(row.columns) as ColumnReading[],
      site: row.site,
    }
    this.#doneBefore = row.doneCount
  }

  /** Loads a run that is at a step; null when it has moved on meanwhile. */
  static async load(around: Surroundings, importId: string, step: 'checking' | 'writing'): Promise<Running | null> {
    const row = await around.store.read.importRun.findUnique({ where: { id: importId, step }, include: { site: true } })
    return row && new Running(around, step, row)
  }

  /** Rows written so far, those of an earlier start of the server too. */
  get doneCount(): number {
    return Math.max(this.#done, this.#doneBefore)
  }

  /** Called between portions. @throws Interruption when the work is to end here */
  async goOn(): Promise<void> {
    // SQLite answers within the turn: without this no request would be heard until the run ends.
    await nextTurn()
    if (this.#around.isStopping()) throw new Interruption('stopping')
    const row = await this.store.read.importRun.findUnique({ where: { id: this.#id }, select: { cancelAsked: true, step: true } })
    if (row?.step !== this.#step) throw new Interruption('moved on')
    if (row.cancelAsked) throw new Interruption('cancelled')
  }

  /** Notes how far it is, and that this server is at it. With a step it is the last note, unless a person asked to cancel until now. */
  async note(progress: Progress): Promise<void> {
    await patiently(() => this.store.write((write) => this.#keep(write, progress)))
  }

  /** One transaction of rows with their count, judged and written anew when the register was busy. */
  async portion<Result extends { readonly done: number; readonly already: number }>(
    work: (write: Write) => Promise<Result>,
    progress: Progress = {},
  ): Promise<Result> {
    await this.goOn()
    const result = await patiently(() =>
      this.store.write(async (write) => {
        const made = await work(write)
        const done = Math.max(this.#done + made.done, this.#doneBefore)
        await this.#keep(write, { doneCount: done, alreadyCount: this.#already + made.already, ...progress })
        return made
      }),
    )
    this.#done += result.done
    this.#already += result.already
    return result
  }

  async #keep(write: Write, progress: Progress): Promise<void> {
    const touchedAt = this.clock()
    const isEnd = progress.step !== undefined
    const { count } = await write.importRun.updateMany({
      where: { id: this.#id, step: this.#step, ...(isEnd && { cancelAsked: false }) },
      data: { ...progress, touchedAt },
    })
    if (count === 0) throw new Interruption(isEnd && (await this.#isAsked(write)) ? 'cancelled' : 'moved on')
    await write.importRun.updateMany({ where: { id: { in: this.#around.ours(), not: this.#id } }, data: { touchedAt } })
  }

  async #isAsked(write: Write): Promise<boolean> {
    return (await write.importRun.count({ where: { id: this.#id, step: this.#step, cancelAsked: true } })) > 0
  }
}

type LoadedRow = Prisma.ImportRunGetPayload<{ include: { site: true } }>
