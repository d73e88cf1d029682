import { TZDate } from '@date-fns/tz'
import type { FastifyBaseLogger } from 'fastify'
import { type Clock, dayAt } from '../../platform/clock.ts'
import { newId } from '../../platform/ids.ts'
import type { Store } from '../../platform/store.ts'
import { type Job, startJob } from '../../platform/worker.ts'
import { type FitBody, rebuildStates } from '../glands/index.ts'
import type { FitJob } from './fit-worker.ts'

export type FitCause = 'nightly' | 'after an import' | 'asked for'

interface Running {
  readonly done: Promise<void>
  share: number
  /** Another was asked for while this one ran: the lives may have changed since it read them. */
  isAskedAgain: FitCause | null
}

const HOUR_OF_NIGHT = 2
const LOOK_EVERY_MS = 10 * 60_000

/** Learns in a worker thread how the glands of a site wear and leak, keeps each fit, and renews what the board says. */
export class Fits {
  readonly #parts: {
    readonly store: Store
    readonly databaseUrl: string
    readonly clock: Clock
    readonly log: Pick<FastifyBaseLogger, 'error'>
  }
  readonly #running = new Map<string, Running>()
  readonly #jobs = new Set<Job<FitBody>>()
  readonly #renewing = new Set<Promise<unknown>>()
  #night: NodeJS.Timeout | null = null
  #isStopping = false

  constructor(parts: { store: Store; databaseUrl: string; clock: Clock; log: Pick<FastifyBaseLogger, 'error'> }) {
    this.#parts = parts
  }

  /** Fits the site, or once more after the fit that is running. */
  ask(siteId: string, cause: FitCause): Promise<void> {
    const running = this.#running.get(siteId)
    if (running) {
      running.isAskedAgain = cause
      return running.done
    }
    const started: Running = { done: this.#fitUntilSettled(siteId, cause), share: 0, isAskedAgain: null }
    this.#running.set(siteId, started)
    return started.done
  }

  /** Share of the running fit that is done; null while none runs. */
  progressOf(siteId: string): number | null {
    return this.#running.get(siteId)?.share ?? null
  }

  /** Looks every ten minutes whether a site has had its fit of the night, so that a missed night is made up for. */
  watchNights(): void {
    this.#night = setInterval(() => void this.fitsOfTheNight(), LOOK_EVERY_MS).unref()
  }

  async fitsOfTheNight(): Promise<void> {
    const { store, clock } = this.#parts
    for (const { id, timeZone } of await store.read.site.findMany({ select: { id: true, timeZone: true } })) {
      const now = clock()
      if (new TZDate(now, timeZone).getHours() < HOUR_OF_NIGHT) continue
      const newest = await store.read.wearFit.findFirst({
        where: { siteId: id },
        orderBy: { fittedAt: 'desc' },
        select: { fittedAt: true },
      })
      if (newest === null || dayAt(newest.fittedAt, timeZone) < dayAt(now, timeZone)) await this.ask(id, 'nightly')
    }
  }

  /** Everything the board says of the site's future, made again: a setting or the planned stop has changed. */
  renew(siteId: string): Promise<unknown> {
    const { store, clock, log } = this.#parts
    const renewing = rebuildStates(store, siteId, { retiredAt: null }, { clock, shouldStop: () => this.#isStopping })
      .catch((error: unknown) => log.error({ err: error, siteId }, 'the forecasts of a site were not all renewed'))
      .finally(() => this.#renewing.delete(renewing))
    this.#renewing.add(renewing)
    return renewing
  }

  async close(): Promise<void> {
    this.#isStopping = true
    if (this.#night) clearInterval(this.#night)
    for (const job of this.#jobs) void job.stop()
    await Promise.allSettled([...[...this.#running.values()].map(({ done }) => done), ...this.#renewing])
  }

  async #fitUntilSettled(siteId: string, cause: FitCause): Promise<void> {
    // So that the entry of `running` is there before anything is looked up in it.
    await Promise.resolve()
    try {
      for (let next: FitCause | null = cause; next !== null && !this.#isStopping;) {
        await this.#fit(siteId, next)
        const running = this.#running.get(siteId)
        next = running?.isAskedAgain ?? null
        if (running) running.isAskedAgain = null
      }
    } catch (error) {
      this.#parts.log.error({ err: error, siteId }, 'a fit failed: forecasts go on from the one before')
    } finally {
      this.#running.delete(siteId)
    }
  }

  async #fit(siteId: string, cause: FitCause): Promise<void> {
    const { store, clock } = this.#parts
    const body = await this.#computed(siteId)
    if (body === null) return
    await store.write((write) =>
      write.wearFit.create({ data: { id: newId(), siteId, fittedAt: clock(), cause, body: JSON.stringify(body) } }),
    )
    await this.renew(siteId)
  }

  async #computed(siteId: string): Promise<FitBody | null> {
    const asked: FitJob = { databaseUrl: this.#parts.databaseUrl, siteId }
    const job = startJob<FitBody>(new URL('./fit-worker.js', import.meta.url), asked, (share) => {
      const running = this.#running.get(siteId)
      if (running) running.share = share
    })
    this.#jobs.add(job)
    return await job.made.finally(() => this.#jobs.delete(job))
  }
}
