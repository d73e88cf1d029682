// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { openReader } from '../../platform/store.ts'
import { makeRoundPlan } from './make-round-plan.ts'
import type { PlanRequest } from './read-plan-input.ts'

/** Runs in a thread of its own: reads, plans, and hands the plan back. It never writes. */
async function work({
  databaseUrl,
  request,
  limitMs,
}: {
  databaseUrl: string
  request: PlanRequest
  limitMs: number
}): Promise<void> {
  const reader = await openReader(databaseUrl)
  try {
    const until = performance.now() + limitMs
    const made = await makeRoundPlan(reader.read, request, {
      onProgress: (share) => parentPort?.postMessage({ share }),
      shouldStop: () => performance.now() > until,
    })
    parentPort?.postMessage({ made: { ...made, startsOn: request.startsOn } })
  } finally {
    await reader.close()
  }
}

void work(workerData as { databaseUrl: string; request: PlanRequest; limitMs: number })
