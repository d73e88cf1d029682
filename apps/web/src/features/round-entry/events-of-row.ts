import { type FieldEvent, LeakGrade, MissedReason, StemFeel } from '@glandkeeper/contract/events'
import type { z } from 'zod'
import { type Draft, emptyDraft, entriesOf, type Fact, factsOf, type GapUnit, noteOf } from '../readings/index.ts'
import { isDay, momentOf, timeOf } from './moment-at-site.ts'
import { gapIn, turnsIn } from './row-figures.ts'
import { type Cell, isEmpty, type RowTexts } from './row-texts.ts'

export interface RowFault {
  /** Null where no cell can be blamed. */
  readonly cell: Cell | null
  readonly says: string
  /** What is missing is said when the row is saved: until then it may still be typed. */
  readonly isMissing: boolean
}

/** What holds for every row of the paper. */
export interface OnPaper {
  readonly day: string
  readonly timeZone: string
  readonly takenBy: string
  readonly gapUnit: GapUnit
  readonly now: Date
}

export type RowRead =
  | { readonly is: 'empty' }
  | { readonly is: 'faulty'; readonly faults: readonly RowFault[] }
  /** `saysLeak` of the leak as it was left: blank on paper is not `dry`, as it is on the phone. */
  | { readonly is: 'read'; readonly draft: Draft; readonly at: Date; readonly saysLeak: boolean }

/** A row of the paper as what stands on the page of a phone for the same visit, or what cannot be understood in it. */
export function readRow(texts: RowTexts, paper: OnPaper): RowRead {
  if (isEmpty(texts)) return { is: 'empty' }
  const faults: RowFault[] = []
  const unreadable = (cell: Cell, says: string) => faults.push({ cell, says, isMissing: false })
  const figure = (cell: Cell, read: ReturnType<typeof turnsIn>) => {
    if ('value' in read) return read.value
    unreadable(cell, read.fault)
    return null
  }
  const word = <Schema extends z.ZodType>(cell: Cell, schema: Schema): z.output<Schema> | null => {
    const parsed = schema.safeParse(texts[cell])
    if (!parsed.success && texts[cell] !== '') unreadable(cell, `There is no word ${texts[cell]} here.`)
    return parsed.data ?? null
  }
  const visit: Visit = {
    turns: [figure('turnsLeft', turnsIn(texts.turnsLeft)), figure('turnsRight', turnsIn(texts.turnsRight))],
    gaps: [figure('gapLeft', gapIn(texts.gapLeft, paper.gapUnit)), figure('gapRight', gapIn(texts.gapRight, paper.gapUnit))],
    leaks: [word('leakBefore', LeakGrade), word('leakAfter', LeakGrade)],
    stem: word('stem', StemFeel),
    missed: word('missed', MissedReason),
  }
  const at = momentIn(texts.time, paper, (says) => unreadable('time', says))
  if (faults.length > 0 || at === null) return { is: 'faulty', faults }
  const contradictions = contradictionsIn(visit)
  if (contradictions.length > 0) return { is: 'faulty', faults: contradictions }
  const saysLeak = isTurnedIn(visit) ? visit.leaks[1] !== null : isSaid(visit.leaks)
  return { is: 'read', at, saysLeak, draft: draftOf(visit, texts, paper, at) }
}

/** The entries of a row that was read, each with an id of its own, or why the contract does not take them. */
export function entriesOfRow(
  { draft, at, saysLeak }: Extract<RowRead, { is: 'read' }>,
  valveId: string,
): { readonly ok: true; readonly entries: readonly FieldEvent[] } | { readonly ok: false; readonly faults: readonly RowFault[] } {
  const facts = saysLeak ? factsOf(draft) : factsOf(draft).map(withoutLeak)
  const built = entriesOf({ valveId, at, takenBy: draft.takenBy, note: noteOf(draft) }, facts)
  if (built.ok) return built
  // Figures and words were judged before, so what is left is the note.
  return { ok: false, faults: built.faults.map((says) => ({ cell: 'note', says: `Note: ${says}.`, isMissing: false })) }
}

type Sides<T> = readonly [left: T | null, right: T | null]

interface Visit {
  readonly turns: Sides<number>
  readonly gaps: Sides<number>
  readonly leaks: readonly [before: LeakGrade | null, after: LeakGrade | null]
  readonly stem: z.output<typeof StemFeel> | null
  readonly missed: z.output<typeof MissedReason> | null
}

const isSaid = (values: readonly unknown[]) => values.some((value) => value !== null)
const isTurnedIn = ({ turns }: Visit) => turns.some((side) => side !== null && side !== 0)

function draftOf(visit: Visit, { note }: RowTexts, { takenBy }: OnPaper, at: Date): Draft {
  const { turns, gaps, leaks, stem, missed } = visit
  const [before, after] = leaks
  const isTurned = isTurnedIn(visit)
  return {
    ...emptyDraft,
    kind: missed === null ? 'turns, gap, leak' : 'could not do it',
    turns: isTurned ? 'other' : 'none',
    otherTurns: { left: turns[0] ?? 0, right: turns[1] ?? 0 },
    gapLeft: gaps[0],
    gapRight: gaps[1],
    leak: (isTurned ? after : (after ?? before)) ?? emptyDraft.leak,
    leakBefore: isTurned ? before : null,
    stem,
    missed,
    takenAt: at.toISOString(),
    takenBy,
    note,
  }
}

/** The phone has always a leak to say; a paper may say none. */
function withoutLeak(fact: Fact): Fact {
  if (fact.kind === 'gland.nipped') return { ...fact, leakAfter: undefined }
  return fact.kind === 'reading.taken' ? { ...fact, leak: undefined } : fact
}

function contradictionsIn(visit: Visit): RowFault[] {
  const { turns, gaps, leaks, stem, missed } = visit
  const missing = (cell: Cell, says: string): RowFault[] => [{ cell, says, isMissing: true }]
  const isDone = isSaid([...turns, ...gaps, ...leaks, stem])
  if (missed !== null) return isDone ? missing('missed', 'Either it was done or it was not: empty one of the two.') : []
  if (isSaid(turns) && turns.includes(null))
    return missing(turns[0] === null ? 'turnsLeft' : 'turnsRight', 'Say the turns of both nuts: 0 for one that was not turned.')
  const [before, after] = leaks
  if (!isTurnedIn(visit) && before !== null && after !== null && before !== after)
    return missing('leakAfter', 'Nothing was turned, so there is one leak: empty one of the two, or say the turns.')
  if (isTurnedIn(visit) || isSaid([...gaps, ...leaks])) return []
  if (stem !== null) return missing('stem', 'How the stem moves goes with a leak, a gap or turns: say one of them.')
  return missing('note', 'A note goes with a leak, a gap, turns, or why it could not be done: say one of them.')
}

function momentIn(time: string, { day, timeZone, now }: OnPaper, fault: (says: string) => void): Date | null {
  const read = timeOf(time)
  if (read === 'unreadable') fault('Write a time as 7:40.')
  if (!isDay(day) || day < '1950') fault('Give the day of the walk, above the rows.')
  if (read === 'unreadable' || !isDay(day)) return null
  const at = momentOf(day, read, timeZone, now)
  if (at > now) fault('This has not come yet: look at the day and the time.')
  return at
}
