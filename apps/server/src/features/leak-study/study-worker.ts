// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { openReader } from '../../platform/store.ts'
import type { MadeStudy } from './kept-study.ts'
import { makeStudy } from './make-study.ts'

export interface StudyJob {
  readonly databaseUrl: string
  readonly siteId: string
  readonly now: number
  readonly entries: number
}

/** Runs in a thread of its own: reads, sums up, and hands the study back. It never writes. */
async function work({ databaseUrl, siteId, now, entries }: StudyJob): Promise<void> {
  const reader = await openReader(databaseUrl)
  try {
    const madeAt = new Date(now)
    const body = await makeStudy(reader.read, { siteId, now: madeAt }, (share) => parentPort?.postMessage({ share }))
    const made: MadeStudy = { madeAt, entries, body: JSON.stringify(body) }
    parentPort?.postMessage({ made })
  } finally {
    await reader.close()
  }
}

void work(workerData as StudyJob)
