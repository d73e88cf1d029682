import type { FieldEvent } from '@glandkeeper/contract/events'
import { type OutboxEntry, putRight } from '../../platform/outbox/entries.ts'
import { outbox } from '../../platform/outbox/outbox.ts'

export interface PutRight {
  readonly valveId: string
  readonly changes: readonly { readonly entry: OutboxEntry; readonly event: FieldEvent }[]
  readonly says: string
}

/**
 * Of a row that was typed anew, what takes the place of its refused entries: each by the one of its kind, under its own
 * id. Null where one would have none: that is for a person to set aside.
 */
export function changesFor(refused: readonly OutboxEntry[], made: readonly FieldEvent[]): PutRight['changes'] | null {
  const changes = refused.map((entry) => ({ entry, event: made.find(({ kind }) => kind === entry.event.kind) }))
  if (changes.some(({ event }) => event === undefined)) return null
  return changes.flatMap(({ entry, event }) => (event ? [{ entry, event: { ...event, id: entry.event.id } }] : []))
}

export async function sendAgain({ changes, says }: PutRight): Promise<void> {
  for (const { entry, event } of changes) await outbox.change((database) => putRight(database, { ...entry, says }, event))
}
