import type { LeakGrade, StemFeel } from '@glandkeeper/contract/events'
import type { z } from 'zod'
import type { Fact } from './commands.ts'
import type { Turned } from './leaves.ts'
import { deferredFacts, type LeakActs, missingOfDeferral, noActs, treatedFacts } from './leak-acts.ts'
import { noSource, type PackingSource, sourceFacts, takenOf } from './reel.ts'
import { isSaidMore, missingReading, noSighting, type Sighting, sightingFacts } from './sighting.ts'

export const kinds = [
  'turns, gap, leak',
  'leak seen',
  'could not do it',
  'repacked',
  'ring added',
  'something else done about a leak',
  'put the repair off',
] as const
export type Kind = (typeof kinds)[number]
export const turnChoices = ['none', 'quarter', 'half', 'one', 'other'] as const
type TurnChoice = (typeof turnChoices)[number]

export interface DraftFieldsProps {
  draft: Draft
  onChange: (change: Partial<Draft>) => void
}

/** What stands on the page. Null is not said, and is not sent. */
export interface Draft extends PackingSource, Sighting, LeakActs {
  readonly kind: Kind
  /** As it was left: after the nuts were turned, where they were. */
  readonly leak: LeakGrade
  /** Before the nuts were touched. */
  readonly leakBefore: LeakGrade | null
  readonly stem: z.infer<typeof StemFeel> | null
  readonly gapLeft: number | null
  readonly gapRight: number | null
  readonly turns: TurnChoice
  readonly otherTurns: Turned
  readonly missed: Extract<Fact, { kind: 'visit.missed' }>['reason'] | null
  readonly family: Extract<Fact, { kind: 'packing.renewed' }>['family']
  readonly cut: NonNullable<Extract<Fact, { kind: 'packing.renewed' }>['cut']>
  readonly rings: number | null
  readonly section: number | null
  readonly proved: boolean | null
  readonly ringsAdded: number | null
  /** As a datetime-local field has it; null is now. */
  readonly takenAt: string | null
  readonly takenBy: string
  readonly note: string
}

export const emptyDraft: Draft = {
  ...noSource,
  ...noSighting,
  ...noActs,
  kind: 'turns, gap, leak',
  leak: 'dry',
  leakBefore: null,
  stem: null,
  gapLeft: null,
  gapRight: null,
  turns: 'half',
  otherTurns: { left: 0.5, right: 0.5 },
  missed: null,
  family: 'unknown',
  cut: 'unknown',
  rings: null,
  section: null,
  proved: null,
  ringsAdded: 1,
  takenAt: null,
  takenBy: '',
  note: '',
}

const equally: Readonly<Record<Exclude<TurnChoice, 'other'>, number>> = { none: 0, quarter: 0.25, half: 0.5, one: 1 }

export function turnedOf({ turns, otherTurns }: Draft): Turned {
  return turns === 'other' ? otherTurns : { left: equally[turns], right: equally[turns] }
}

export function isTurned(draft: Draft): boolean {
  const { left, right } = turnedOf(draft)
  return draft.kind === 'turns, gap, leak' && (left !== 0 || right !== 0)
}

export function isRead({ gapLeft, gapRight }: Draft): boolean {
  return gapLeft !== null || gapRight !== null
}

const figure = (value: number | null) => value ?? undefined

/** The leak that drops, screening value and the rest belong to: they are taken before the nuts are touched. */
export function measuredLeak(draft: Draft): LeakGrade | null {
  return isTurned(draft) ? draft.leakBefore : draft.leak
}

function isSaidOfLeak(draft: Draft): boolean {
  return isSaidMore(draft, measuredLeak(draft))
}

function leakSeen(draft: Draft, leak: LeakGrade): Fact {
  return { kind: 'leak.seen', leak, ...sightingFacts(draft, leak) }
}

/**
 * The entries one press of the button makes, in the order they happened: the gap is read after the nuts were turned.
 * Leak and stem belong to one entry only, so that one leak is not counted twice. A leak with figures is an entry of its
 * own, before the nuts were turned: one after them would pass for the look that is to follow a nip.
 */
export function factsOf(draft: Draft): Fact[] {
  const gaps = { gapLeft: figure(draft.gapLeft), gapRight: figure(draft.gapRight) }
  switch (draft.kind) {
    case 'turns, gap, leak':
      return visitFacts(draft, gaps)
    case 'leak seen':
      return [leakSeen(draft, draft.leak)]
    case 'could not do it':
      return draft.missed === null ? [] : [{ kind: 'visit.missed', reason: draft.missed }]
    case 'repacked':
      return [
        {
          kind: 'packing.renewed',
          family: draft.family,
          cut: draft.cut,
          rings: figure(draft.rings),
          section: figure(draft.section),
          ...gaps,
          proved: draft.proved ?? undefined,
        },
      ]
    case 'ring added':
      return draft.ringsAdded === null
        ? []
        : [{ kind: 'ring.added', rings: draft.ringsAdded, ...gaps, ...sourceFacts(draft, draft.ringsAdded, 0) }]
    case 'something else done about a leak':
      return treatedFacts(draft, draft.leakBefore)
    case 'put the repair off':
      return deferredFacts(draft)
  }
}

function visitFacts(draft: Draft, gaps: { gapLeft: number | undefined; gapRight: number | undefined }): Fact[] {
  const stem = draft.stem ?? undefined
  const leak = measuredLeak(draft)
  const measured = isSaidOfLeak(draft) && leak !== null ? [leakSeen(draft, leak)] : []
  const isSaid = measured.length > 0
  if (isTurned(draft)) {
    const { left, right } = turnedOf(draft)
    const leakBefore = isSaid ? undefined : (leak ?? undefined)
    const nip: Fact = { kind: 'gland.nipped', turnsLeft: left, turnsRight: right, leakBefore, leakAfter: draft.leak, stem }
    return [...measured, nip, ...(isRead(draft) ? [{ kind: 'reading.taken', ...gaps } as const] : [])]
  }
  if (isRead(draft)) return [...measured, { kind: 'reading.taken', ...gaps, leak: isSaid ? undefined : draft.leak, stem }]
  return [leakSeen(draft, draft.leak)]
}

/** A look without a figure has no place for the stem, so it goes with the words. */
export function noteOf(draft: Draft): string {
  const isLook = draft.kind === 'turns, gap, leak' && !isTurned(draft) && !isRead(draft)
  return noteWithStem(isLook ? draft.stem : null, draft.note)
}

/** Where an entry has no place for the stem. */
export function noteWithStem(stem: Draft['stem'], note: string): string {
  return [stem !== null && `Stem ${stem}.`, note.trim()].filter(Boolean).join(' ')
}

/** What is missing before this can be sent, as the person would be asked for it. */
export function missingIn(draft: Draft): string | null {
  if (draft.kind === 'could not do it' && draft.missed === null) return 'Say why it could not be done.'
  if (draft.kind === 'ring added' && draft.ringsAdded === null) return 'Say how many rings were added.'
  if (draft.kind === 'ring added' && draft.reel !== null && takenOf(draft, draft.ringsAdded, 0) === null)
    return 'Say how much was taken from the reel.'
  if (draft.kind === 'turns, gap, leak' && isSaidOfLeak(draft) && measuredLeak(draft) === null)
    return 'Say how much it leaked before the nuts were touched: what is said more of the leak belongs to that one.'
  if (draft.kind === 'something else done about a leak' && draft.treatment === null) return 'Say what was done.'
  if (draft.kind === 'put the repair off') return missingOfDeferral(draft)
  return draft.kind === 'turns, gap, leak' || draft.kind === 'leak seen' ? missingReading(draft) : null
}
