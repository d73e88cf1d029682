import { openReader } from '../../platform/store.ts'
import { doJobs } from '../../platform/worker.ts'
import type { MadeStudy } from './kept-study.ts'
import { makeStudy } from './make-study.ts'

export interface StudyJob {
  readonly databaseUrl: string
  readonly siteId: string
  readonly now: number
  readonly entries: number
}

/** Runs in a thread of its own: reads, sums up, and hands the study back. It never writes. */
async function work({ databaseUrl, siteId, now, entries }: StudyJob, say: (share: number) => void): Promise<MadeStudy> {
  const reader = await openReader(databaseUrl)
  try {
    const madeAt = new Date(now)
    const body = await makeStudy(reader.read, { siteId, now: madeAt }, say)
    return { madeAt, entries, body: JSON.stringify(body) }
  } finally {
    await reader.close()
  }
}

doJobs(work)
