import type { FastifyBaseLogger } from 'fastify'
import { type Clock, dayAt } from '../../platform/clock.ts'
import { mondayOf } from '../../platform/local-time.ts'
import { SiteWork } from '../../platform/site-work.ts'
import type { Store } from '../../platform/store.ts'
import type { MadePlan } from './make-round-plan.ts'
import type { PlanJob } from './plan-worker.ts'
import { writeDraft } from './write-draft.ts'

export interface PlanningAsked {
  readonly weeks: number
  readonly frozenWeeks: number
  readonly seed: number
}

export type Planning = SiteWork<PlanningAsked, StartedPlan>

/** A plan, and the Monday it was asked to start on: a planning may run past midnight. */
interface StartedPlan extends MadePlan {
  readonly startsOn: string
}

/** The search ends with what it has after so long; a plant of 20,000 valves takes a few seconds. */
const LIMIT_MS = 60_000

/** Plans rounds in a worker thread, one plan of a site at a time, and keeps the draft it makes. */
export function planningOf(parts: {
  readonly store: Store
  readonly databaseUrl: string
  readonly clock: Clock
  readonly log: Pick<FastifyBaseLogger, 'error'>
}): Planning {
  const { store, databaseUrl, clock, log } = parts
  return new SiteWork<PlanningAsked, StartedPlan>({
    worker: new URL('./plan-worker.js', import.meta.url),
    onBreak: 'The planning met an unexpected fault; the plan in use stays.',
    log,
    jobOf: async ({ siteId }, asked): Promise<PlanJob> => {
      const { timeZone } = await store.read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
      const startsOn = mondayOf(dayAt(clock(), timeZone))
      return { databaseUrl, request: { siteId, startsOn, ...asked }, limitMs: LIMIT_MS }
    },
    keep: (by, { weeks }, { startsOn, ...made }, isCancelled) =>
      writeDraft(store, by, { startsOn, weeks, made, at: clock() }, isCancelled),
  })
}
