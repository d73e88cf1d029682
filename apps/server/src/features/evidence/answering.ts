import type { ProblemCode } from '@glandkeeper/contract/problem'
import { Refusal } from '../../platform/problem.ts'
import type { Reader } from '../../platform/store.ts'
import { startJob } from '../../platform/worker.ts'
import { type AnswerTo, answerTo, type EvidenceJob } from './answers.ts'

export interface Refused {
  readonly code: ProblemCode
  readonly detail: string | undefined
}
export type Answering = <Job extends EvidenceJob>(job: Job) => Promise<AnswerTo<Job>>

const SMALL_FILE_BYTES = 1024 * 1024
const SHORT_CHAIN = 2_000

/**
 * What is small is answered at once; the rest in a thread, one after the other: a hundred thousand entries take seconds
 * and much memory, and no entry from the field may wait for them.
 */
export function answering(reader: Reader, databaseUrl: string): Answering {
  let before: Promise<unknown> = Promise.resolve()
  return async <Job extends EvidenceJob>(job: Job): Promise<AnswerTo<Job>> => {
    if (await isSmall(reader, job)) return (await answerTo(reader, job)) as AnswerTo<Job>
    const done = before.then(() => inThread(databaseUrl, job))
    before = done.catch(() => {})
    return done
  }
}

async function isSmall({ read }: Reader, job: EvidenceJob): Promise<boolean> {
  if (job.is === 'check') return job.bytes.length <= SMALL_FILE_BYTES
  if (job.is === 'pdf') return false
  if (job.asked.scope.tag !== undefined) return true
  const site = await read.site.findUniqueOrThrow({ where: { id: job.asked.siteId }, select: { chainLength: true } })
  return site.chainLength <= SHORT_CHAIN
}

async function inThread<Job extends EvidenceJob>(databaseUrl: string, job: Job): Promise<AnswerTo<Job>> {
  const worker = new URL('./evidence-worker.js', import.meta.url)
  const said = await startJob<{ answer: AnswerTo<Job> } | { refused: Refused }>(worker, { databaseUrl, job }).made
  if (said === null) throw new Error('the thread ended without an answer')
  if ('refused' in said) throw new Refusal(said.refused.code, said.refused.detail)
  return said.answer
}
