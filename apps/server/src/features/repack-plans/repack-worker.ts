import { loadSolver } from '../../platform/highs-solver.ts'
import { doReadingJobs } from '../../platform/reading-worker.ts'
import { makeRepackPlan } from './make-repack-plan.ts'
import type { RepackRequest } from './read-repack-input.ts'

export interface RepackJob {
  readonly databaseUrl: string
  readonly request: RepackRequest
  readonly now: number
  readonly limits: { readonly seconds: number; readonly relativeGap: number }
}

doReadingJobs(async ({ read }, { request, now, limits }: RepackJob, say) => {
  const solve = await loadSolver()
  const made = await makeRepackPlan(read, request, {
    now: new Date(now),
    limits: { ...limits, solve },
    watch: { onProgress: say },
  })
  return 'fault' in made ? made : { ...made, startsOn: request.startsOn }
})
