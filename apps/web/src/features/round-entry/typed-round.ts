import { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { Problem } from '@glandkeeper/contract/problem'
import type { RoundStop } from '@glandkeeper/contract/rounds'
import { z } from 'zod'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import type { OutboxView } from '../../platform/outbox/outbox.ts'
import { keep, kept } from '../../platform/kept.ts'
import type { RowFault } from './events-of-row.ts'
import { type Cell, emptyRow, isEmpty, RowTexts } from './row-texts.ts'

/** One row as this device keeps it until the register shows what became of it. */
const TypedRow = z.object({
  texts: RowTexts,
  /**
   * Its entries, kept here before they go to the outbox: a page that dies between the two finishes the save under the
   * same ids, and nothing is doubled.
   */
  made: z.array(FieldEvent),
  isSaved: z.boolean(),
  /** As it was typed, in a line. */
  says: z.string(),
})
export type TypedRow = z.infer<typeof TypedRow>

const TypedRound = z.object({ day: z.string(), takenBy: z.string(), rows: z.record(z.string(), TypedRow) })
export type TypedRound = z.infer<typeof TypedRound>

export const newRow: TypedRow = { texts: emptyRow, made: [], isSaved: false, says: '' }

const keyOf = (roundId: string) => `type-in ${roundId}`
export const keptRound = (roundId: string) => kept(keyOf(roundId), TypedRound)
export const keepRound = (roundId: string, typed: TypedRound) => keep(keyOf(roundId), typed)

export const isUnsaved = ({ texts, isSaved }: TypedRow) => !isSaved && !isEmpty(texts)

type Waiting = Pick<OutboxView, 'entries' | 'outcomes'>

export type RowStanding =
  | { readonly is: 'open' }
  | { readonly is: 'fixed'; readonly says: string }
  /** The register would not take some of its entries: they are put right here, under their own ids. */
  | { readonly is: 'refused'; readonly refused: readonly OutboxEntry[] }

interface Seen extends Waiting {
  /** Ids of entries that the register has, as far as this device has heard of them. */
  readonly arrived: ReadonlySet<string>
}

/** What has become of a row since it was saved. */
export function standingOf({ isSaved, made }: TypedRow, stop: Pick<RoundStop, 'visit'>, seen: Seen): RowStanding {
  if (!isSaved) return { is: 'open' }
  const ids = new Set(made.map(({ id }) => id))
  const own = seen.entries.filter(({ event }) => ids.has(event.id))
  const refused = own.filter(({ state }) => state === 'refused')
  if (refused.length > 0) return { is: 'refused', refused }
  if (own.length > 0) return { is: 'fixed', says: 'saved on this device' }
  const hasArrived = (id: string) =>
    seen.arrived.has(id) || ['accepted', 'already'].includes(seen.outcomes.get(id)?.outcome ?? '')
  if ([...ids].every(hasArrived) || stop.visit !== null) return { is: 'fixed', says: 'saved' }
  // It was sent by another page, or set aside by a person: the register knows.
  return { is: 'fixed', says: 'no longer on this device: the page of the valve shows whether it arrived' }
}

/** The entries of a valve that its card shows. */
export function arrivedOn(card: Pick<ValveCard, 'timeline'> | null): ReadonlySet<string> {
  return new Set(card?.timeline.map(({ event }) => event.id))
}

/** Rows that the register shows by itself need not be kept here any longer. */
export function withoutShown(typed: TypedRound, stops: readonly RoundStop[], { entries, outcomes }: Waiting): TypedRound {
  const waiting = new Set(entries.map(({ event }) => event.id))
  const isShown = (valveId: string, { isSaved, made }: TypedRow) =>
    isSaved &&
    made.every(({ id }) => !waiting.has(id) && !outcomes.has(id)) &&
    stops.some((stop) => stop.valveId === valveId && stop.visit !== null)
  return { ...typed, rows: Object.fromEntries(Object.entries(typed.rows).filter(([valveId, row]) => !isShown(valveId, row))) }
}

const cellOfField: Readonly<Record<string, Cell>> = {
  takenAt: 'time',
  turnsLeft: 'turnsLeft',
  turnsRight: 'turnsRight',
  gapLeft: 'gapLeft',
  gapRight: 'gapRight',
  leakBefore: 'leakBefore',
  leakAfter: 'leakAfter',
  leak: 'leakAfter',
  stem: 'stem',
  reason: 'missed',
  note: 'note',
}

/** A refusal of the server at the cells it is about. */
export function faultsOfProblem({ title, detail, errors }: Problem): RowFault[] {
  const faults = (errors ?? []).map((fault) => ({
    cell: cellOfField[fault.pointer.split('/').at(1) ?? ''] ?? null,
    says: `${title}: ${fault.detail}.`,
    isMissing: false,
  }))
  return faults.length > 0
    ? faults
    : [{ cell: null, says: `${detail === undefined ? title : `${title}: ${detail}`}.`, isMissing: false }]
}
