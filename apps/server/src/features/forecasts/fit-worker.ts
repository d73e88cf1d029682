import { openReader } from '../../platform/store.ts'
import { doJobs } from '../../platform/worker.ts'
import { fitOfLives } from './fit-of-lives.ts'
import { livesOfSite } from './lives-of-site.ts'

export interface FitJob {
  readonly databaseUrl: string
  readonly siteId: string
}

/** Runs in a thread of its own: reads, computes, and hands the fit back. It never writes. */
async function work({ databaseUrl, siteId }: FitJob, say: (share: number) => void) {
  const reader = await openReader(databaseUrl)
  try {
    return fitOfLives(await livesOfSite(reader.read, siteId), say)
  } finally {
    await reader.close()
  }
}

doJobs(work)
