import type { RepackBoundary, RepackSlot } from './input.ts'

/** Why a boundary can never be in a slot, whatever room there is. */
export type ClosedBecause = 'no isolation on line' | 'ruled out' | 'area not reached'

/** What keeps a boundary out of a slot for good; null where the slot is open to it. */
export function closedBecause(boundary: RepackBoundary, { id, isOutage }: RepackSlot): ClosedBecause | null {
  if (!boundary.isolatesOnLine && !isOutage) return 'no isolation on line'
  if (boundary.excluded.includes(id)) return 'ruled out'
  if (boundary.closedSlots.includes(id)) return 'area not reached'
  return null
}
