// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { openReader } from '../../platform/store.ts'
import { prove } from './prove.ts'

export interface ProofJob {
  readonly databaseUrl: string
  readonly siteId: string
}

/** Runs in a thread of its own: walks, and says what it found. It never writes. */
async function work({ databaseUrl, siteId }: ProofJob): Promise<void> {
  const reader = await openReader(databaseUrl)
  try {
    const made = await prove(reader, siteId, (share) => parentPort?.postMessage({ share }))
    parentPort?.postMessage({ made })
  } finally {
    await reader.close()
  }
}

void work(workerData as ProofJob)
