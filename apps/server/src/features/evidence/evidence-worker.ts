import { Refusal } from '../../platform/problem.ts'
import { doReadingJobs } from '../../platform/reading-worker.ts'
import { answerTo, type EvidenceJob } from './answers.ts'
import type { Refused } from './answering.ts'

doReadingJobs(async (reader, { job }: { job: EvidenceJob }) => {
  try {
    return { answer: await answerTo(reader, job) }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const refused: Refused = { code: error.code, detail: error.detail }
    return { refused }
  }
})
