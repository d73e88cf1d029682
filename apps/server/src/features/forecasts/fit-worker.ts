import { doReadingJobs } from '../../platform/reading-worker.ts'
import { fitOfLives } from './fit-of-lives.ts'
import { livesOfSite } from './lives-of-site.ts'

export interface FitJob {
  readonly databaseUrl: string
  readonly siteId: string
}

doReadingJobs(async ({ read }, { siteId }: FitJob, say) => fitOfLives(await livesOfSite(read, siteId), say))
