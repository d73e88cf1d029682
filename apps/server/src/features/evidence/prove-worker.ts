import { openReader } from '../../platform/store.ts'
import { doJobs } from '../../platform/worker.ts'
import { prove } from './prove.ts'

export interface ProofJob {
  readonly databaseUrl: string
  readonly siteId: string
}

/** Runs in a thread of its own: walks, and says what it found. It never writes. */
async function work({ databaseUrl, siteId }: ProofJob, say: (share: number) => void) {
  const reader = await openReader(databaseUrl)
  try {
    return await prove(reader, siteId, say)
  } finally {
    await reader.close()
  }
}

doJobs(work)
