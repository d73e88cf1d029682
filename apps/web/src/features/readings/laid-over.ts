import type { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { stillHolding } from '../../platform/outbox/still-holding.ts'
import { leavesAfter, reserveRead } from './leaves.ts'

const NO_TURN = { left: 0, right: 0 }

/**
 * A card as it stands once the entries that wait on this device are in the register: what the person at the valve has
 * just done must not be forgotten because nobody could be told yet. The server works it out anew.
 */
export function laidOver(card: ValveCard, waiting: readonly FieldEvent[]): ValveCard {
  return stillHolding(waiting)
    .toSorted((one, other) => Date.parse(one.takenAt) - Date.parse(other.takenAt))
    .reduce(withEntry, card)
}

function withEntry(card: ValveCard, event: ReturnType<typeof stillHolding>[number]): ValveCard {
  switch (event.kind) {
    case 'gland.nipped': {
      const after = leavesAfter(card, { left: event.turnsLeft, right: event.turnsRight })
      if (!after) return card
      const { gapLeft, gapRight, reserve } = after
      return { ...card, state: { ...card.state, gapLeft, gapRight, gapIsInferred: true, reserve } }
    }
    case 'reading.taken':
    case 'packing.renewed':
    case 'ring.added': {
      const read = { gapLeft: event.gapLeft ?? null, gapRight: event.gapRight ?? null }
      if (read.gapLeft === null && read.gapRight === null) return card
      const reserve = reserveRead(card, NO_TURN, read)
      const gaps = { gapLeft: event.gapLeft ?? card.state.gapLeft, gapRight: event.gapRight ?? card.state.gapRight }
      return { ...card, state: { ...card.state, ...gaps, gapIsInferred: false, reserve } }
    }
    case 'leak.seen':
    case 'leak.treated':
    case 'repair.deferred':
    case 'visit.missed':
      return card
  }
}
