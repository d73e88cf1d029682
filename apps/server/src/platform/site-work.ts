import type { FastifyBaseLogger } from 'fastify'
import { type Job, startJob } from './worker.ts'

export interface By {
  readonly siteId: string
  readonly personId: string
}

export interface WorkParts<Asked, Made> {
  /** The file of the worker, beside the caller. */
  readonly worker: URL
  /** What the worker is given. */
  readonly jobOf: (by: By, asked: Asked) => Promise<object>
  /** Keeps what was made, unless it was cancelled meanwhile. */
  readonly keep: (by: By, asked: Asked, made: Made, isCancelled: () => boolean) => Promise<void>
  /** Said where something broke that nobody foresaw. */
  readonly onBreak: string
  readonly log: Pick<FastifyBaseLogger, 'error'>
}

interface Running {
  share: number
  job: Pick<Job<unknown>, 'stop'> | null
  isCancelled: boolean
  done: Promise<void>
}

/** The last part is the writing. */
const SHARE_BEFORE_KEEPING = 0.95

/** Long work in a worker thread, one piece for a site at a time, with its progress; cancelled at any moment. */
export class SiteWork<Asked, Made extends object> {
  readonly #parts: WorkParts<Asked, Made>
  readonly #running = new Map<string, Running>()
  readonly #faults = new Map<string, string>()

  constructor(parts: WorkParts<Asked, Made>) {
    this.#parts = parts
  }

  /** Starts, unless something runs for the site already: then that goes on. */
  start(by: By, asked: Asked): Promise<void> {
    const already = this.#running.get(by.siteId)
    if (already) return already.done
    this.#faults.delete(by.siteId)
    const running: Running = { share: 0, job: null, isCancelled: false, done: Promise.resolve() }
    this.#running.set(by.siteId, running)
    running.done = this.#work(by, asked, running)
      .catch((error: unknown) => {
        this.#faults.set(by.siteId, this.#parts.onBreak)
        this.#parts.log.error({ err: error, siteId: by.siteId }, 'work of a site failed')
      })
      .finally(() => this.#running.delete(by.siteId))
    return running.done
  }

  progressOf(siteId: string): { share: number | null; fault: string | null } {
    return { share: this.#running.get(siteId)?.share ?? null, fault: this.#faults.get(siteId) ?? null }
  }

  /** Stops what runs, and waits until nothing of it is left. */
  async cancel(siteId: string): Promise<boolean> {
    const running = this.#running.get(siteId)
    if (!running) return false
    running.isCancelled = true
    await running.job?.stop()
    await running.done
    return true
  }

  async close(): Promise<void> {
    await Promise.all([...this.#running.keys()].map((siteId) => this.cancel(siteId)))
  }

  async #work(by: By, asked: Asked, running: Running): Promise<void> {
    const made = await this.#made(await this.#parts.jobOf(by, asked), running)
    if (made === null || running.isCancelled) return
    if ('fault' in made) {
      this.#faults.set(by.siteId, made.fault)
      return
    }
    await this.#parts.keep(by, asked, made, () => running.isCancelled)
  }

  /** What the thread made, the sentence that says why there is nothing, or null where it was cancelled. */
  async #made(asked: object, running: Running): Promise<Made | { readonly fault: string } | null> {
    if (running.isCancelled) return null
    const job = startJob<Made | { readonly fault: string }>(this.#parts.worker, asked, (share) => {
      running.share = share * SHARE_BEFORE_KEEPING
    })
    running.job = job
    return await job.made
  }
}
