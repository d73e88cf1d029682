import { loadSolver } from '../../platform/highs-solver.ts'
import { openReader } from '../../platform/store.ts'
import { doJobs } from '../../platform/worker.ts'
import { makeRepackPlan } from './make-repack-plan.ts'
import type { RepackRequest } from './read-repack-input.ts'

export interface RepackJob {
  readonly databaseUrl: string
  readonly request: RepackRequest
  readonly now: number
  readonly limits: { readonly seconds: number; readonly relativeGap: number }
}

/** Runs in a thread of its own: reads, plans, and hands the plan back. It never writes. */
async function work({ databaseUrl, request, now, limits }: RepackJob, say: (share: number) => void) {
  const reader = await openReader(databaseUrl)
  try {
    const solve = await loadSolver()
    const made = await makeRepackPlan(reader.read, request, {
      now: new Date(now),
      limits: { ...limits, solve },
      watch: { onProgress: say },
    })
    return 'fault' in made ? made : { ...made, startsOn: request.startsOn }
  } finally {
    await reader.close()
  }
}

doJobs(work)
