import { Refusal } from '../../platform/problem.ts'
import { openReader } from '../../platform/store.ts'
import { doJobs } from '../../platform/worker.ts'
import { answerTo, type EvidenceJob } from './answers.ts'
import type { Refused } from './answering.ts'

/** Runs in a thread of its own. */
async function answer({ databaseUrl, job }: { databaseUrl: string; job: EvidenceJob }) {
  const reader = await openReader(databaseUrl)
  try {
    return { answer: await answerTo(reader, job) }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const refused: Refused = { code: error.code, detail: error.detail }
    return { refused }
  } finally {
    await reader.close()
  }
}

doJobs(answer)
