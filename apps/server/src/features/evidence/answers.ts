import { sign } from 'node:crypto'
import type { EvidenceCheck } from '@glandkeeper/contract/evidence'
import { canonicalJson } from '../../platform/chain.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Reader } from '../../platform/store.ts'
import { checkEvidence } from './check.ts'
import { evidenceCsv } from './csv.ts'
import { type ExportAsked, exportOf } from './export.ts'
import { countIn, siteThen } from './scope.ts'
import type { Head } from './seals.ts'

export type EvidenceJob =
  | { readonly is: 'count'; readonly asked: ExportAsked }
  /** With the private half in PEM. */
  | { readonly is: 'signed'; readonly asked: ExportAsked; readonly privateKey: string }
  | { readonly is: 'csv'; readonly asked: ExportAsked }
  | { readonly is: 'pdf'; readonly asked: ExportAsked; readonly fingerprint: string }
  | { readonly is: 'check'; readonly siteId: string; readonly bytes: Uint8Array }

interface Answers {
  readonly count: { readonly entries: number }
  readonly signed: { readonly payload: string; readonly signature: string; readonly head: Head }
  readonly csv: { readonly text: string; readonly head: Head }
  readonly pdf: { readonly bytes: Uint8Array<ArrayBuffer>; readonly head: Head }
  readonly check: EvidenceCheck
}
export type AnswerTo<Job extends EvidenceJob> = Answers[Job['is']]

/** What is larger could not be sent back to be checked. */
const MOST_BYTES = 127 * 1024 * 1024

/** Everything that is asked about exports; it reads, and never writes. */
export async function answerTo(reader: Reader, job: EvidenceJob): Promise<Answers[keyof Answers]> {
  if (job.is === 'check') return checkEvidence(reader, job.siteId, job.bytes)
  if (job.is === 'count') {
    const site = await siteThen(reader.read, job.asked.siteId)
    return { entries: await countIn(reader.read, site, job.asked.scope) }
  }
  const evidence = await exportOf(reader, job.asked)
  const head = { position: evidence.chain.length, hash: evidence.chain.head }
  if (job.is === 'csv') return { text: evidenceCsv(evidence), head }
  if (job.is === 'pdf') {
    // Fonts and all of the printing: for this one alone.
    const { printedEvidence } = await import('./print.ts')
    return { bytes: await printedEvidence(evidence, job.fingerprint), head }
  }
  const payload = canonicalJson(evidence)
  refuseTooLarge(payload, evidence.entries.length)
  return { payload, signature: sign(null, Buffer.from(payload), job.privateKey).toString('base64'), head }
}

/** As it goes into the file, each quote in it with a stroke before it. */
function refuseTooLarge(payload: string, entries: number): void {
  if (payload.length <= MOST_BYTES / 4) return
  const bytes = Buffer.byteLength(JSON.stringify(payload))
  if (bytes > MOST_BYTES) throw new Refusal('evidence/too-much', `${entries} entries of ${Math.round(bytes / 1e6)} MB`)
}
