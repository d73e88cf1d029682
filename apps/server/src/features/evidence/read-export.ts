import { Evidence, EvidencePayload, MOST_ENTRIES_IN_EXPORT } from '@glandkeeper/contract/evidence'
import type { z } from 'zod'

export interface ReadExport {
  readonly evidence: Evidence
  readonly payload: EvidencePayload
}
interface Unread {
  readonly fault: string
}

/** An export out of the bytes of a file, or the words for why it is none. */
export function readExport(bytes: Uint8Array): ReadExport | Unread {
  const evidence = fitted(Evidence, fromJson(textOf(bytes)), 'The file')
  if ('fault' in evidence) return evidence
  const signed = fromJson(evidence.value.payload)
  const entries = entriesIn(signed)
  // Before each of them is looked at: a file may hold millions.
  if (entries > MOST_ENTRIES_IN_EXPORT) return { fault: `It has ${entries} entries, more than an export has.` }
  const payload = fitted(EvidencePayload, signed, 'What is signed')
  return 'fault' in payload ? payload : { evidence: evidence.value, payload: payload.value }
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

/** Undefined for what is no JSON, also for brackets in brackets without end, at which the parser gives up. */
function fromJson(text: string | null): unknown {
  try {
    return text === null ? undefined : JSON.parse(text)
  } catch {
    return undefined
  }
}

function entriesIn(signed: unknown): number {
  const entries = (signed as { entries?: unknown } | null | undefined)?.entries
  return Array.isArray(entries) ? entries.length : 0
}

function fitted<Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
  what: string,
): { readonly value: z.output<Schema> } | Unread {
  if (value === undefined) return { fault: `${what} is not JSON in UTF-8: this is no export of evidence, or it is cut short.` }
  const result = schema.safeParse(value)
  if (result.success) return { value: result.data }
  const [issue] = result.error.issues
  const at = issue === undefined || issue.path.length === 0 ? 'as a whole' : issue.path.map(String).join('/')
  return { fault: `${what} is not an export of evidence: ${at}: ${issue?.message ?? 'unknown'}.` }
}
