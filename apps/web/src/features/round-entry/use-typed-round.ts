import type { Round, RoundStop } from '@glandkeeper/contract/rounds'
import { useEffect, useEffectEvent, useRef, useState } from 'react'
import { addEntries, entriesIn, type NewEntry } from '../../platform/outbox/entries.ts'
import { outbox } from '../../platform/outbox/outbox.ts'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { useMe } from '../people/index.tsx'
import type { Cell } from './row-texts.ts'
import { type PutRight, sendAgain } from './put-right-row.ts'
import { keepRound, keptRound, newRow, type TypedRound, type TypedRow, withoutShown } from './typed-round.ts'

/** A row that was understood, ready for the outbox. */
export interface MadeRow {
  readonly stop: RoundStop
  readonly made: TypedRow['made']
  readonly says: string
}

/** What is typed of a round, on the disk of this device with every letter, and on its way when it is saved. */
export function useTypedRound(round: Round) {
  const me = useMe()
  const view = useOutbox()
  const { roundId, stops } = round
  const [typed, setTyped] = useState(() => withoutShown(keptRound(roundId) ?? startOf(round, me.personId), stops, view))
  const [fault, setFault] = useState<string | null>(null)
  const latest = useRef(typed)

  const change = (next: TypedRound) => {
    latest.current = next
    keepRound(roundId, next)
    setTyped(next)
  }
  const changeRows = (rows: Readonly<Record<string, TypedRow>>) =>
    change({ ...latest.current, rows: { ...latest.current.rows, ...rows } })
  const type = (valveId: string, cell: Cell, text: string) => {
    const row = latest.current.rows[valveId] ?? newRow
    changeRows({ [valveId]: { ...row, texts: { ...row.texts, [cell]: text } } })
  }

  /** Kept first, then in the outbox, all or none: what is on the screen as saved is on the disk. */
  const save = async (rows: readonly MadeRow[]) => {
    const withMade = (isSaved: boolean) =>
      Object.fromEntries(
        rows.map(({ stop, made, says }) => [
          stop.valveId,
          { ...(latest.current.rows[stop.valveId] ?? newRow), made: [...made], says, isSaved },
        ]),
      )
    changeRows(withMade(false))
    try {
      await outbox.add(rows.flatMap(({ stop, made, says }) => entriesOf(made, { tag: stop.tag, says, personId: me.personId })))
      setFault(null)
      changeRows(withMade(true))
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error))
      changeRows(Object.fromEntries(rows.map(({ stop }) => [stop.valveId, { ...withMade(false)[stop.valveId]!, made: [] }])))
    }
  }

  /** Entries of a row that the register refused, as they are now. */
  const putRight = async (right: PutRight) => {
    await sendAgain(right)
    const row = latest.current.rows[right.valveId] ?? newRow
    changeRows({ [right.valveId]: { ...row, says: right.says } })
  }

  const finishBegun = useEffectEvent(async () => {
    const begun = stops.flatMap((stop) => {
      const row = latest.current.rows[stop.valveId]
      return row && row.made.length > 0 && !row.isSaved ? [{ stop, row }] : []
    })
    if (begun.length === 0) return
    const { personId } = me
    await finish(begun.flatMap(({ stop, row: { made, says } }) => entriesOf(made, { tag: stop.tag, says, personId })))
    changeRows(Object.fromEntries(begun.map(({ stop, row }) => [stop.valveId, { ...row, isSaved: true }])))
  })
  // Once: what a page before this one has begun to save.
  useEffect(() => void finishBegun(), [])

  const about = (what: Partial<Pick<TypedRound, 'day' | 'takenBy'>>) => change({ ...latest.current, ...what })
  return { typed, fault, type, about, save, putRight }
}

const entriesOf = (made: TypedRow['made'], entry: Omit<NewEntry, 'event'>): NewEntry[] =>
  made.map((event) => ({ event, ...entry }))

/** The save that a page before this one began: what is in the outbox stays, what is not goes in under its own id. */
function finish(entries: readonly NewEntry[]): Promise<void> {
  return outbox.change(async (database) => {
    const there = new Set((await entriesIn(database)).map(({ event }) => event.id))
    const missing = entries.filter(({ event }) => !there.has(event.id))
    if (missing.length > 0) await addEntries(database, missing)
  })
}

/** The paper of somebody else is typed in under their name. */
function startOf({ walkOn, fitterId, fitterName }: Round, personId: string): TypedRound {
  return { day: walkOn, takenBy: fitterId === personId ? '' : (fitterName ?? ''), rows: {} }
}
