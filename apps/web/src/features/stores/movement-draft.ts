import type { StockItem } from '@glandkeeper/contract/stores'
import { formatISO } from 'date-fns'
import { figureOf } from '../readings/index.ts'
import type { MovementInput } from './queries.ts'

/** What somebody does to stock by hand. */
export const movementActs = ['order', 'receive', 'issue', 'return', 'count'] as const
export type MovementAct = (typeof movementActs)[number]

export const forWhom = ['a valve', 'an outage', 'not said'] as const

/** A movement as typed, before it is known to fit the contract. */
export interface MovementDraft {
  readonly amount: string
  /** So many alike: reels of one length, boxes of one count. */
  readonly many: string
  readonly label: string
  readonly batch: string
  readonly expiresOn: string
  readonly expectedOn: string
  /** Empty where it came of no order that is known. */
  readonly orderId: string
  readonly lotId: string
  readonly whom: (typeof forWhom)[number]
  readonly tag: string
  readonly outageId: string
  /** As a datetime-local field has it; empty is now. */
  readonly takenAt: string
  readonly note: string
}

export function movementDraftFor({ packSize, onOrder, lots }: Pick<StockItem, 'packSize' | 'onOrder' | 'lots'>): MovementDraft {
  const [firstOrder] = onOrder
  return {
    amount: String(packSize),
    many: manyIn(firstOrder?.amount ?? 0, packSize),
    label: '',
    batch: '',
    expiresOn: '',
    expectedOn: '',
    orderId: firstOrder?.orderId ?? '',
    lotId: lots.length === 1 ? (lots[0]?.lotId ?? '') : '',
    whom: 'a valve',
    tag: '',
    outageId: '',
    takenAt: '',
    note: '',
  }
}

/** How many reels or boxes an order is likely to come in. */
export function manyIn(ordered: number, packSize: number): string {
  return String(Math.max(1, Math.round(ordered / packSize)))
}

interface Circumstances {
  readonly itemId: string
  readonly now: Date
  readonly newId: () => string
}

const MOST_ALIKE = 60

/** What is sent: one movement, or one for each reel that came. A figure that is none is refused by the contract in words. */
export function movementsOf(act: MovementAct, draft: MovementDraft, { itemId, now, newId }: Circumstances): MovementInput[] {
  const amount = figureOf(draft.amount) ?? Number.NaN
  const every = () => ({ movementId: newId(), itemId, takenAt: momentOf(draft.takenAt, now), note: draft.note })
  switch (act) {
    case 'order':
      return [{ ...every(), kind: 'ordered', amount, expectedOn: draft.expectedOn }]
    case 'receive': {
      const { batch, expiresOn, orderId } = draft
      return labelsFrom(draft.label, manyOf(draft.many)).map((label) => ({
        ...every(),
        kind: 'received',
        lotId: newId(),
        label,
        batch,
        amount,
        expiresOn: expiresOn === '' ? null : expiresOn,
        orderId: orderId === '' ? null : orderId,
      }))
    }
    case 'issue':
      return [{ ...every(), kind: 'issued', lotId: draft.lotId, amount, ...whomOf(draft) }]
    case 'return':
      return [{ ...every(), kind: 'returned', lotId: draft.lotId, amount }]
    case 'count':
      return [{ ...every(), kind: 'counted', lotId: draft.lotId, amount }]
  }
}

function whomOf({ whom, tag, outageId }: MovementDraft) {
  return { tag: whom === 'a valve' ? tag.trim() : null, outageId: whom === 'an outage' ? outageId : null }
}

function momentOf(typed: string, now: Date): string {
  return formatISO(typed === '' ? now : new Date(typed))
}

/** Whether so many can be made at once; what is no count is one, and is told beside its field. */
export function manyFault(many: string): string | null {
  const count = figureOf(many)
  return count !== null && Number.isInteger(count) && count >= 1 && count <= MOST_ALIKE ? null : `From 1 to ${MOST_ALIKE}`
}

function manyOf(many: string): number {
  return manyFault(many) === null ? Number(figureOf(many)) : 1
}

/**
 * A label for each of so many that are alike: a figure at the end is counted on from, else one is put there.
 *
 * @example labelsFrom('R-098', 3) // → ['R-098', 'R-099', 'R-100']
 * @example labelsFrom('north rack', 2) // → ['north rack 1', 'north rack 2']
 */
export function labelsFrom(label: string, many: number): string[] {
  const first = label.trim()
  if (many === 1 || first === '') return [first]
  const digits = /\d{1,9}$/.exec(first)?.[0]
  return Array.from({ length: many }, (_, index) =>
    digits === undefined
      ? `${first} ${index + 1}`
      : first.slice(0, -digits.length) + String(Number(digits) + index).padStart(digits.length, '0'),
  )
}

/** Takes one back: it stays on record, struck through. */
export function takenBack(itemId: string, corrects: string, { now, newId }: Omit<Circumstances, 'itemId'>): MovementInput {
  return { movementId: newId(), kind: 'taken back', itemId, takenAt: formatISO(now), note: '', corrects }
}
