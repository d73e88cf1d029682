import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { Round, RoundStop } from '@glandkeeper/contract/rounds'
import { useState } from 'react'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { counted } from '../../ui/count.ts'
import { type GapUnit, laidOver, questionsBefore } from '../readings/index.ts'
import { entriesOfRow, type OnPaper, readRow, type RowFault } from './events-of-row.ts'
import { changesFor, type PutRight } from './put-right-row.ts'
import { isEmpty, rowInWords, type RowTexts } from './row-texts.ts'
import { arrivedOn, faultsOfProblem, newRow, type RowStanding, standingOf, type TypedRow } from './typed-round.ts'
import type { MadeRow, useTypedRound } from './use-typed-round.ts'

interface ToSave {
  readonly round: Round
  readonly typing: ReturnType<typeof useTypedRound>
  readonly cards: ReadonlyMap<string, ValveCard>
  readonly gapUnit: GapUnit
  readonly timeZone: string
}

/** What was said of a row when it was last to be saved; of another text it no longer holds. */
interface Told {
  readonly texts: RowTexts
  readonly faults: readonly RowFault[]
  readonly questions: readonly string[]
}

type Judged =
  | { readonly is: 'made'; readonly row: MadeRow }
  | { readonly is: 'right'; readonly change: PutRight }
  | { readonly is: 'told'; readonly told: Told }

/** The button: every row that is understood goes, and every other says at its cell why it stays. */
export function useSaving({ round, typing, cards, gapUnit, timeZone }: ToSave) {
  const view = useOutbox()
  const [told, setTold] = useState<Readonly<Record<string, Told>>>({})
  const [count, setCount] = useState('')
  const [isSaving, setIsSaving] = useState(false)
  const { day, takenBy, rows } = typing.typed
  const paper = (): OnPaper => ({ day, takenBy, timeZone, gapUnit, now: new Date() })
  const heldFor = ({ valveId }: RoundStop, texts: RowTexts) => (told[valveId]?.texts === texts ? told[valveId] : null)

  const judge = (stop: RoundStop, row: TypedRow, standing: RowStanding): Judged | null => {
    const { texts } = row
    if (standing.is === 'fixed' || isEmpty(texts)) return null
    const stays = (faults: readonly RowFault[], questions: readonly string[] = []): Judged => ({
      is: 'told',
      told: { texts, faults, questions },
    })
    const read = readRow(texts, paper())
    if (read.is !== 'read') return stays(read.is === 'faulty' ? read.faults : [])
    const built = entriesOfRow(read, stop.valveId)
    if (!built.ok) return stays(built.faults)
    const questions = questionsAbout(cards.get(stop.valveId), read.draft, built.entries)
    if (questions.length > 0 && (heldFor(stop, texts)?.questions.length ?? 0) === 0) return stays([], questions)
    const says = rowInWords(texts, gapUnit)
    if (standing.is === 'open') return { is: 'made', row: { stop, made: [...built.entries], says } }
    const changes = changesFor(standing.refused, built.entries)
    return changes ? { is: 'right', change: { valveId: stop.valveId, changes, says } } : stays([otherKind])
  }

  const questionsAbout = (card: ValveCard | undefined, ...[draft, entries]: QuestionsAbout) => {
    if (!card) return []
    const waiting = view.entries.filter(({ event }) => event.valveId === card.valve.valveId).map(({ event }) => event)
    return questionsBefore(draft, entries, laidOver(card, waiting))
  }

  const save = async () => {
    if (isSaving) return
    setIsSaving(true)
    const judged = round.stops.flatMap((stop) => {
      const row = rows[stop.valveId] ?? newRow
      const found = judge(stop, row, standingOf(row, stop, { ...view, arrived: arrivedOn(cards.get(stop.valveId) ?? null) }))
      return found ? [{ stop, found }] : []
    })
    const made = judged.flatMap(({ found }) => (found.is === 'made' ? [found.row] : []))
    const right = judged.flatMap(({ found }) => (found.is === 'right' ? [found.change] : []))
    const stay = judged.flatMap(({ stop, found }) => (found.is === 'told' ? [[stop.valveId, found.told] as const] : []))
    if (made.length > 0) await typing.save(made)
    for (const change of right) await typing.putRight(change)
    setTold(Object.fromEntries(stay))
    setCount(countInWords(made.length + right.length, stay.length))
    setIsSaving(false)
    focusFirstFault(round, stay)
  }

  /** As it is typed a cell that cannot be read says so; what is missing is said when the row is to be saved. */
  const faultsOf = (stop: RoundStop, { texts }: TypedRow, standing: RowStanding): readonly RowFault[] => {
    const refused =
      standing.is === 'refused' ? standing.refused.flatMap(({ problem }) => (problem ? faultsOfProblem(problem) : [])) : []
    const held = heldFor(stop, texts)
    if (held) return [...refused, ...held.faults]
    if (standing.is === 'fixed') return []
    const read = readRow(texts, paper())
    return [...refused, ...(read.is === 'faulty' ? read.faults.filter(({ isMissing }) => !isMissing) : [])]
  }
  const questionsOf = (stop: RoundStop, { texts }: TypedRow) => heldFor(stop, texts)?.questions ?? []
  return { save, faultsOf, questionsOf, isSaving, told: count }
}

type QuestionsAbout = [Parameters<typeof questionsBefore>[0], Parameters<typeof questionsBefore>[1]]

const otherKind: RowFault = {
  cell: null,
  says: 'What was refused is no longer in this row: type it again, or set the refused entry aside on the page of what waits.',
  isMissing: true,
}

function countInWords(saved: number, stay: number): string {
  const needs = stay === 0 ? '' : `${counted(stay, 'row')} ${stay === 1 ? 'needs' : 'need'} you`
  return [saved > 0 && `${counted(saved, 'row')} saved`, needs].filter(Boolean).join(', ')
}

/** The keyboard goes on where a hand is needed, once the page shows it. */
function focusFirstFault(round: Round, stay: readonly (readonly [string, Told])[]): void {
  const [first] = stay
  if (!first) return
  const place = round.stops.findIndex(({ valveId }) => valveId === first[0])
  const cell = first[1].faults.find((fault) => fault.cell !== null)?.cell ?? 'turnsLeft'
  requestAnimationFrame(() => document.querySelector<HTMLElement>(`[data-at="${place}:${cell}"]`)?.focus())
}
