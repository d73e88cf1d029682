import { doReadingJobs } from '../../platform/reading-worker.ts'
import { makeRoundPlan } from './make-round-plan.ts'
import type { PlanRequest } from './read-plan-input.ts'

export interface PlanJob {
  readonly databaseUrl: string
  readonly request: PlanRequest
  readonly limitMs: number
}

doReadingJobs(async ({ read }, { request, limitMs }: PlanJob, say) => {
  const until = performance.now() + limitMs
  const made = await makeRoundPlan(read, request, {
    onProgress: say,
    shouldStop: () => performance.now() > until,
  })
  return { ...made, startsOn: request.startsOn }
})
