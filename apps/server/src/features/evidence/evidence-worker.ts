// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { Refusal } from '../../platform/problem.ts'
import { openReader } from '../../platform/store.ts'
import { answerTo, type EvidenceJob } from './answers.ts'
import type { Refused } from './answering.ts'

/** Runs in a thread of its own. */
async function work({ databaseUrl, job }: { databaseUrl: string; job: EvidenceJob }): Promise<void> {
  const reader = await openReader(databaseUrl)
  try {
    parentPort?.postMessage({ made: await answerTo(reader, job) })
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const refused: Refused = { code: error.code, detail: error.detail }
    parentPort?.postMessage({ refused })
  } finally {
    await reader.close()
  }
}

void work(workerData as Parameters<typeof work>[0])
