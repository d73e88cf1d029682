import type { RepackBoundary, RepackPlanInput } from './input.ts'
import type { RepackLoad, Shortage } from './load.ts'
import { type ClosedBecause, closedBecause } from './open-slots.ts'

export interface InfeasiblePin {
  readonly boundaryId: string
  readonly slotId: string
  /** A sentence for the planner. */
  readonly why: string
}

const sentences: Readonly<Record<ClosedBecause, string>> = {
  'no isolation on line': 'It cannot be isolated on line, and this slot is no outage.',
  'ruled out': 'This slot is ruled out for it.',
  'area not reached': 'This outage does not reach its area.',
}

/**
 * Puts pinned boundaries into their slots as far as they fit among themselves: who would lose most by waiting comes first.
 *
 * @returns by place in the input, the slot of each pin that is kept, and the others with the reason
 */
export function settlePins(
  { slots, boundaries }: RepackPlanInput,
  load: RepackLoad,
): { readonly kept: ReadonlyMap<number, number>; readonly infeasible: readonly InfeasiblePin[] } {
  const slotAt = new Map(slots.map(({ id }, slot) => [id, slot]))
  const kept = new Map<number, number>()
  const why = new Map<number, string>()
  const pins: { at: number; boundary: RepackBoundary; slot: number; loss: number }[] = []
  for (const [at, boundary] of boundaries.entries()) {
    if (!boundary.pin) continue
    const slot = slotAt.get(boundary.pin.slotId)
    const slotOfPin = slot === undefined ? undefined : slots[slot]
    const closed = slotOfPin && closedBecause(boundary, slotOfPin)
    if (slot === undefined) why.set(at, 'There is no such slot.')
    else if (closed) why.set(at, sentences[closed])
    else pins.push({ at, boundary, slot, loss: boundary.deferCost.total - (boundary.costs[slot]?.total ?? 0) })
  }
  for (const { at, boundary, slot } of pins.toSorted((one, other) => other.loss - one.loss || one.at - other.at)) {
    const shortage = load.shortageFor(boundary, slot)
    if (shortage) {
      why.set(at, sentenceOf(shortage))
      continue
    }
    load.add(boundary, slot)
    kept.set(at, slot)
  }
  return { kept, infeasible: boundaries.flatMap(({ id, pin }, at) => infeasibleOf(id, pin, why.get(at))) }
}

function infeasibleOf(boundaryId: string, pin: RepackBoundary['pin'], why: string | undefined): readonly InfeasiblePin[] {
  return pin && why !== undefined ? [{ boundaryId, slotId: pin.slotId, why }] : []
}

function sentenceOf(shortage: Shortage): string {
  return 'trade' in shortage
    ? `The slot has too few hours of ${shortage.trade} for all that is pinned to it.`
    : `There is too little ${shortage.itemId} by then for all that is pinned.`
}
