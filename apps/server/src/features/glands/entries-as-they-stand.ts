import type { FieldEvent } from '@glandkeeper/contract/events'
import type { EventModel } from '../../generated/sqlite/models.ts'

type CorrectionSaid = Extract<FieldEvent, { kind: 'fact.corrected' }>
/** An entry in full, or what was put in its place. */
export type Said = Exclude<FieldEvent, CorrectionSaid> | NonNullable<CorrectionSaid['replacement']>

/** An entry as it stands today. */
export interface StandingEntry<Row> {
  readonly row: Row
  readonly said: Said
  readonly takenAt: Date
}

/** Entries of a valve with what corrections made of them, in order of time; what was taken back is left out. */
export function entriesAsTheyStand<Row extends Pick<EventModel, 'id' | 'body' | 'takenAt'>>(
  rows: readonly Row[],
): StandingEntry<Row>[] {
  const parsed = rows.map((row) => ({ row, event: JSON.parse(row.body) as FieldEvent }))
  const latest = new Map<string, CorrectionSaid>()
  const order = (one: { row: Row }, other: { row: Row }) =>
    one.row.takenAt.getTime() - other.row.takenAt.getTime() || (one.row.id < other.row.id ? -1 : 1)
  for (const { event } of parsed.toSorted(order)) if (event.kind === 'fact.corrected') latest.set(event.corrects, event)
  return parsed
    .flatMap(({ row, event }): StandingEntry<Row>[] => {
      if (event.kind === 'fact.corrected') return []
      const correction = latest.get(row.id)
      if (!correction) return [{ row, said: event, takenAt: row.takenAt }]
      const { replacement } = correction
      return replacement === null ? [] : [{ row, said: replacement, takenAt: new Date(replacement.takenAt) }]
    })
    .toSorted((one, other) => one.takenAt.getTime() - other.takenAt.getTime() || (one.row.id < other.row.id ? -1 : 1))
}
