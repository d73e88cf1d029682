import type { FieldEvent } from '@glandkeeper/contract/events'
import { type Correction, type DatedFact, factsAsTheyStand } from '@glandkeeper/engines/reserve/facts'
import { instant } from '@glandkeeper/units/quantity'
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

/** Entries with what corrections made of them, in order of time; what was taken back is left out. */
export function entriesAsTheyStand<Row extends Pick<EventModel, 'id' | 'body' | 'takenAt'>>(
  rows: readonly Row[],
): StandingEntry<Row>[] {
  const facts: DatedFact<Told<Row>>[] = []
  const corrections: Correction<Told<Row>>[] = []
  for (const row of rows) {
    const event = JSON.parse(row.body) as FieldEvent
    const dated = { id: row.id, takenAt: instant(row.takenAt.getTime()) }
    if (event.kind === 'fact.corrected') {
      const { corrects, replacement } = event
      const instead = replacement && { takenAt: instant(Date.parse(replacement.takenAt)), fact: { row, said: replacement } }
      corrections.push({ ...dated, corrects, replacement: instead })
    } else facts.push({ ...dated, fact: { row, said: event } })
  }
  const rowOf = new Map(facts.map(({ id, fact }) => [id, fact.row]))
  return factsAsTheyStand(facts, corrections).standing.map(({ id, takenAt, fact }) => ({
    // Of one that was put right still the row of the entry itself.
    row: rowOf.get(id) ?? fact.row,
    said: fact.said,
    takenAt: new Date(takenAt),
  }))
}

interface Told<Row> {
  readonly row: Row
  readonly said: Said
}
