import { openReader } from '../../platform/store.ts'
import { doJobs } from '../../platform/worker.ts'
import { makeRoundPlan } from './make-round-plan.ts'
import type { PlanRequest } from './read-plan-input.ts'

export interface PlanJob {
  readonly databaseUrl: string
  readonly request: PlanRequest
  readonly limitMs: number
}

/** Runs in a thread of its own: reads, plans, and hands the plan back. It never writes. */
async function work({ databaseUrl, request, limitMs }: PlanJob, say: (share: number) => void) {
  const reader = await openReader(databaseUrl)
  try {
    const until = performance.now() + limitMs
    const made = await makeRoundPlan(reader.read, request, {
      onProgress: say,
      shouldStop: () => performance.now() > until,
    })
    return { ...made, startsOn: request.startsOn }
  } finally {
    await reader.close()
  }
}

doJobs(work)
