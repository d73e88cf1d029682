import type { ChangeSubject } from '@glandkeeper/contract/log'
import { canonicalJson } from './chain.ts'
import { newId } from './ids.ts'
import type { SignedIn } from './auth.ts'
import type { Write } from './store.ts'

export interface RegisterChangeNote {
  readonly subject: ChangeSubject
  readonly subjectId: string
  readonly what: string
  readonly before: Readonly<Record<string, unknown>>
  readonly after: Readonly<Record<string, unknown>>
}

/** Who changed what, with before and after; written in the transaction of the change itself. */
export async function noteChange(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  note: RegisterChangeNote,
  now: Date,
): Promise<void> {
  await write.registerChange.create({ data: changeRow(by, note, now) })
}

export function changeRow(by: Pick<SignedIn, 'siteId' | 'personId'>, note: RegisterChangeNote, now: Date) {
  const { subject, subjectId, what, before, after } = note
  return {
    id: newId(),
    siteId: by.siteId,
    personId: by.personId,
    at: now,
    subject,
    subjectId,
    what,
    before: canonicalJson(before),
    after: canonicalJson(after),
  }
}

export interface FieldChange {
  readonly field: string
  readonly before: string
  readonly after: string
}

/** What is different after a change, field by field, from the two texts that are kept of it. */
export function fieldChanges(before: string, after: string): FieldChange[] {
  const [old, fresh] = [before, after].map((text) => JSON.parse(text) as { [field: string]: unknown })
  const fields = [...new Set([...Object.keys(old ?? {}), ...Object.keys(fresh ?? {})])]
  const said = (value: unknown) =>
    value === undefined || value === null ? '' : typeof value === 'string' ? value : JSON.stringify(value)
  return fields
    .map((field) => ({ field, before: said(old?.[field]), after: said(fresh?.[field]) }))
    .filter((change) => change.before !== change.after)
}
