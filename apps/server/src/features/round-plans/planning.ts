import type { Worker } from 'node:worker_threads'
import type { FastifyBaseLogger } from 'fastify'
import { type Clock, dayAt } from '../../platform/clock.ts'
import type { Store } from '../../platform/store.ts'
import { startWorker } from '../../platform/worker.ts'
import type { MadePlan } from './make-round-plan.ts'
import type { PlanRequest } from './read-plan-input.ts'
import { mondayOf } from '../../platform/local-time.ts'
import { writeDraft } from './write-draft.ts'

export interface PlanningAsked {
  readonly weeks: number
  readonly frozenWeeks: number
  readonly seed: number
}

interface Running {
  share: number
  worker: Worker | null
  isCancelled: boolean
  done: Promise<void>
}

/** The search ends with what it has after so long; a plant of 20,000 valves takes a few seconds. */
const LIMIT_MS = 60_000

/** Plans rounds in a worker thread, one plan of a site at a time, and keeps the draft it makes. */
export class Planning {
  readonly #parts: {
    readonly store: Store
    readonly databaseUrl: string
    readonly clock: Clock
    readonly log: Pick<FastifyBaseLogger, 'error'>
  }
  readonly #running = new Map<string, Running>()
  readonly #faults = new Map<string, string>()

  constructor(parts: { store: Store; databaseUrl: string; clock: Clock; log: Pick<FastifyBaseLogger, 'error'> }) {
    this.#parts = parts
  }

  /** Starts a plan, unless one is being made: then it goes on. */
  start(by: { readonly siteId: string; readonly personId: string }, asked: PlanningAsked): Promise<void> {
    const already = this.#running.get(by.siteId)
    if (already) return already.done
    this.#faults.delete(by.siteId)
    const running: Running = { share: 0, worker: null, isCancelled: false, done: Promise.resolve() }
    this.#running.set(by.siteId, running)
    running.done = this.#plan(by, asked, running)
      .catch((error: unknown) => {
        this.#faults.set(by.siteId, 'The planning met an unexpected fault; the plan in use stays.')
        this.#parts.log.error({ err: error, siteId: by.siteId }, 'a planning failed')
      })
      .finally(() => this.#running.delete(by.siteId))
    return running.done
  }

  progressOf(siteId: string): { share: number | null; fault: string | null } {
    return { share: this.#running.get(siteId)?.share ?? null, fault: this.#faults.get(siteId) ?? null }
  }

  /** Stops the planning that runs, and waits until nothing of it is left. */
  async cancel(siteId: string): Promise<boolean> {
    const running = this.#running.get(siteId)
    if (!running) return false
    running.isCancelled = true
    await running.worker?.terminate()
    await running.done
    return true
  }

  async close(): Promise<void> {
    await Promise.all([...this.#running.keys()].map((siteId) => this.cancel(siteId)))
  }

  async #plan(by: { siteId: string; personId: string }, asked: PlanningAsked, running: Running): Promise<void> {
    const { store, clock } = this.#parts
    const { timeZone } = await store.read.site.findUniqueOrThrow({ where: { id: by.siteId }, select: { timeZone: true } })
    const startsOn = mondayOf(dayAt(clock(), timeZone))
    const made = await this.#computed({ siteId: by.siteId, startsOn, ...asked }, running)
    if (made === null || running.isCancelled) return
    if ('fault' in made) {
      this.#faults.set(by.siteId, made.fault)
      return
    }
    await writeDraft(store, by, { startsOn, weeks: asked.weeks, made, at: clock() }, () => running.isCancelled)
  }

  #computed(request: PlanRequest, running: Running): Promise<MadePlan | { readonly fault: string } | null> {
    const { databaseUrl } = this.#parts
    if (running.isCancelled) return Promise.resolve(null)
    return new Promise((resolve, reject) => {
      const worker = startWorker(new URL('./plan-worker.js', import.meta.url), { databaseUrl, request, limitMs: LIMIT_MS })
      running.worker = worker
      worker.on('message', (message: { share?: number; made?: MadePlan | { fault: string } }) => {
        // The last part is the writing.
        if (message.share !== undefined) running.share = message.share * 0.95
        if (message.made) resolve(message.made)
      })
      worker.on('error', reject)
      worker.on('exit', () => {
        running.worker = null
        resolve(null)
      })
    })
  }
}
