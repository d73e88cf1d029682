import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { makeRepackPlan as endpoint } from '@glandkeeper/contract/repack-plans'
import type { FastifyBaseLogger } from 'fastify'
import { type Clock, dayAt } from '../../platform/clock.ts'
import { SiteWork } from '../../platform/site-work.ts'
import type { Store } from '../../platform/store.ts'
import type { MadeRepackPlan } from './make-repack-plan.ts'
import { repackPlanInUse } from './plan-in-use.ts'
import type { RepackJob } from './repack-worker.ts'
import { writeRepackPlan } from './write-repack-plan.ts'

type Asked = BodyOf<typeof endpoint>

interface StartedPlan extends MadeRepackPlan {
  readonly startsOn: string
}

/** Within half a thousandth of the bound nobody looks further; a plant of 20,000 valves is nearer after half a minute. */
const LIMITS = { seconds: 30, relativeGap: 0.0005 }

/** Plans repacks in a worker thread, one plan of a site at a time, and keeps every plan it makes. */
export class RepackPlanning {
  readonly #work: SiteWork<Asked, StartedPlan>
  /** Of each site the plan made last. */
  readonly #last = new Map<string, string>()

  constructor({
    store,
    databaseUrl,
    clock,
    log,
  }: {
    store: Store
    databaseUrl: string
    clock: Clock
    log: Pick<FastifyBaseLogger, 'error'>
  }) {
    this.#work = new SiteWork<Asked, StartedPlan>({
      worker: new URL('./repack-worker.js', import.meta.url),
      onBreak: 'The planning met an unexpected fault; the plan in use stays.',
      log,
      jobOf: async ({ siteId }, { weeks, objective, whatIf, basedOn }): Promise<RepackJob> => {
        const { timeZone } = await store.read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
        const now = clock()
        const against = whatIf === null ? null : (basedOn ?? (await repackPlanInUse(store.read, siteId))?.id ?? null)
        const request = { siteId, startsOn: dayAt(now, timeZone), weeks, objective, whatIf, basedOn: against }
        return { databaseUrl, request, now: now.getTime(), limits: LIMITS }
      },
      keep: async (by, asked, { startsOn, ...made }, isCancelled) => {
        const id = await writeRepackPlan(store, by, { ...asked, startsOn, made, at: clock() }, isCancelled)
        if (id !== null) this.#last.set(by.siteId, id)
      },
    })
  }

  start(by: { siteId: string; personId: string }, asked: Asked): Promise<void> {
    return this.#work.start(by, asked)
  }

  progressOf(siteId: string): { share: number | null; fault: string | null; planId: string | null } {
    return { ...this.#work.progressOf(siteId), planId: this.#last.get(siteId) ?? null }
  }

  cancel(siteId: string): Promise<boolean> {
    return this.#work.cancel(siteId)
  }

  close(): Promise<void> {
    return this.#work.close()
  }
}
