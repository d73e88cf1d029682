// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { loadSolver } from '../../platform/highs-solver.ts'
import { openReader } from '../../platform/store.ts'
import { makeRepackPlan } from './make-repack-plan.ts'
import type { RepackRequest } from './read-repack-input.ts'

export interface RepackJob {
  readonly databaseUrl: string
  readonly request: RepackRequest
  readonly now: number
  readonly limits: { readonly seconds: number; readonly relativeGap: number }
}

/** Runs in a thread of its own: reads, plans, and hands the plan back. It never writes. */
async function work({ databaseUrl, request, now, limits }: RepackJob): Promise<void> {
  const reader = await openReader(databaseUrl)
  try {
    const solve = await loadSolver()
    const made = await makeRepackPlan(reader.read, request, {
      now: new Date(now),
      limits: { ...limits, solve },
      watch: { onProgress: (share) => parentPort?.postMessage({ share }) },
    })
    parentPort?.postMessage({ made: 'fault' in made ? made : { ...made, startsOn: request.startsOn } })
  } finally {
    await reader.close()
  }
}

void work(workerData as RepackJob)
