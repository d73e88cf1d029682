import { FieldEvent } from '@glandkeeper/contract/events'
import {
  type Correction,
  type DatedFact,
  type EntryStanding,
  type Fact,
  factsAsTheyStand,
} from '@glandkeeper/engines/reserve/facts'
import { type Instant, instant } from '@glandkeeper/units/quantity'
import type { EventModel } from '../../generated/sqlite/models.ts'
import { netScreening } from './net-screening.ts'

export type EventRow = Pick<EventModel, 'id' | 'kind' | 'body' | 'takenAt'>

/** What a valve's event rows say, in the terms of the engines: facts, and corrections of them. */
export function factsOfRows(rows: readonly EventRow[]): { facts: DatedFact[]; corrections: Correction[] } {
  const facts: DatedFact[] = []
  const corrections: Correction[] = []
  for (const row of rows) {
    // Parsed when it was accepted; stored events never change.
    const event = JSON.parse(row.body) as FieldEvent
    const dated = { id: row.id, takenAt: instant(row.takenAt.getTime()) }
    if (event.kind === 'fact.corrected') {
      const { corrects, replacement } = event
      corrections.push({
        ...dated,
        corrects,
        replacement: replacement && { takenAt: instantOf(replacement.takenAt), fact: factOf(replacement) },
      })
    } else {
      facts.push({ ...dated, fact: factOf(event) })
    }
  }
  return { facts, corrections }
}

/** How each entry stands by the corrections among these rows; one that is not in it is a correction. */
export function howRowsStand(rows: readonly EventRow[]): ReadonlyMap<string, EntryStanding> {
  const { facts, corrections } = factsOfRows(rows)
  return howFactsStand(factsAsTheyStand(facts, corrections))
}

export function howFactsStand({ standing, takenBack }: ReturnType<typeof factsAsTheyStand>): ReadonlyMap<string, EntryStanding> {
  return new Map([
    ...standing.map(({ id, standsAs }) => [id, standsAs] as const),
    ...takenBack.map(({ id }) => [id, 'taken back'] as const),
  ])
}

type Body =
  | Exclude<FieldEvent, { kind: 'fact.corrected' }>
  | NonNullable<Extract<FieldEvent, { kind: 'fact.corrected' }>['replacement']>

function factOf(event: Body): Fact {
  switch (event.kind) {
    case 'reading.taken':
      return {
        kind: event.kind,
        gapLeft: event.gapLeft ?? null,
        gapRight: event.gapRight ?? null,
        threadRemaining: event.threadRemaining ?? null,
        stem: event.stem ?? null,
        leak: event.leak ?? null,
      }
    case 'gland.nipped':
      return {
        kind: event.kind,
        turnsLeft: event.turnsLeft,
        turnsRight: event.turnsRight,
        stem: event.stem ?? null,
        leakBefore: event.leakBefore ?? null,
        leakAfter: event.leakAfter ?? null,
      }
    case 'leak.seen':
      return { kind: event.kind, leak: event.leak, netScreening: netScreening(event) }
    case 'leak.treated':
      return {
        kind: event.kind,
        treatment: event.treatment,
        leakBefore: event.leakBefore ?? null,
        leakAfter: event.leakAfter ?? null,
      }
    case 'repair.deferred':
      return { kind: event.kind, until: event.until ?? null }
    case 'packing.renewed':
      return {
        kind: event.kind,
        gapLeft: event.gapLeft ?? null,
        gapRight: event.gapRight ?? null,
        family: event.family,
        rings: event.rings ?? null,
        proved: event.proved ?? null,
      }
    case 'ring.added':
      return { kind: event.kind, gapLeft: event.gapLeft ?? null, gapRight: event.gapRight ?? null }
    case 'visit.missed':
      return { kind: event.kind }
  }
}

function instantOf(text: string): Instant {
  return instant(Date.parse(text))
}
