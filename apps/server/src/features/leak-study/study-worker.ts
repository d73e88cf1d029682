import { doReadingJobs } from '../../platform/reading-worker.ts'
import type { MadeStudy } from './kept-study.ts'
import { makeStudy } from './make-study.ts'

export interface StudyJob {
  readonly databaseUrl: string
  readonly siteId: string
  readonly now: number
  readonly entries: number
}

doReadingJobs(async ({ read }, { siteId, now, entries }: StudyJob, say): Promise<MadeStudy> => {
  const madeAt = new Date(now)
  const body = await makeStudy(read, { siteId, now: madeAt }, say)
  return { madeAt, entries, body: JSON.stringify(body) }
})
