import { doReadingJobs } from '../../platform/reading-worker.ts'
import { prove } from './prove.ts'

export interface ProofJob {
  readonly databaseUrl: string
  readonly siteId: string
}

doReadingJobs((reader, { siteId }: ProofJob, say) => prove(reader, siteId, say))
