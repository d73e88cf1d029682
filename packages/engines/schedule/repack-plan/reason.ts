import type { RepackBoundary, RepackPlanInput, RepackSlot } from './input.ts'
import type { RepackLoad } from './load.ts'
import { closedBecause } from './open-slots.ts'

/** Why a boundary is in its slot, or waits. */
export type RepackReason =
  | 'pinned'
  | 'costs least of all its slots'
  | 'only an outage isolates it'
  | 'a cheaper slot is closed to it'
  | 'a cheaper slot has no hours left'
  | 'cord or parts come later'
  | 'waits: repacking now would waste more'
  | 'no slot has room'
  | 'no slot is open to it'
  | 'pin cannot be kept'

export interface Explained {
  readonly reason: RepackReason
  /** The trade or the item that is short in the cheapest slot it could otherwise be in. */
  readonly blockedBy: string | null
  /** The next best it could be in with all others where they are; null waits. A pin may cost more than that: then below 0. */
  readonly runnerUp: { readonly slotId: string | null; readonly extraCost: number } | null
}

const NEARLY_NOTHING = 1e-9

/** Says of a boundary why it is where it is, from what all others leave of hours and stock. */
export function explain(input: RepackPlanInput, load: RepackLoad, boundary: RepackBoundary, slot: number | null): Explained {
  if (slot !== null) load.add(boundary, slot, -1)
  const explained = {
    ...(boundary.pin ? pinned(slot) : reasonOf(input, load, boundary, slot)),
    runnerUp: runnerUpOf(input, load, boundary, slot),
  }
  if (slot !== null) load.add(boundary, slot)
  return explained
}

type Reason = Omit<Explained, 'runnerUp'>

function pinned(slot: number | null): Reason {
  return { reason: slot === null ? 'pin cannot be kept' : 'pinned', blockedBy: null }
}

function reasonOf({ slots }: RepackPlanInput, load: RepackLoad, boundary: RepackBoundary, slot: number | null): Reason {
  const own = costOf(boundary, slot)
  const cheaper = boundary.costs
    .map(({ total }, at) => ({ at, total, closed: closedBecause(boundary, slots[at] as RepackSlot) }))
    .filter(({ total }) => total < own - NEARLY_NOTHING)
    .toSorted((one, other) => one.total - other.total || one.at - other.at)
  for (const { at, closed } of cheaper) {
    const shortage = closed ? null : load.shortageFor(boundary, at)
    if (!shortage) continue
    if ('itemId' in shortage) return { reason: 'cord or parts come later', blockedBy: shortage.itemId }
    return { reason: slot === null ? 'no slot has room' : 'a cheaper slot has no hours left', blockedBy: shortage.trade }
  }
  const [closed] = cheaper.flatMap((each) => each.closed ?? [])
  if (!closed)
    return { reason: slot === null ? 'waits: repacking now would waste more' : 'costs least of all its slots', blockedBy: null }
  if (slot === null) return { reason: 'no slot is open to it', blockedBy: null }
  return {
    reason: closed === 'no isolation on line' ? 'only an outage isolates it' : 'a cheaper slot is closed to it',
    blockedBy: null,
  }
}

function runnerUpOf(
  { slots }: RepackPlanInput,
  load: RepackLoad,
  boundary: RepackBoundary,
  slot: number | null,
): Explained['runnerUp'] {
  let best: { slotId: string | null; total: number } | null =
    slot === null ? null : { slotId: null, total: boundary.deferCost.total }
  for (const [at, { total }] of boundary.costs.entries()) {
    const other = slots[at] as RepackSlot
    if (at === slot || (best && total >= best.total) || closedBecause(boundary, other)) continue
    if (load.shortageFor(boundary, at) === null) best = { slotId: other.id, total }
  }
  return best && { slotId: best.slotId, extraCost: best.total - costOf(boundary, slot) }
}

function costOf({ costs, deferCost }: RepackBoundary, slot: number | null): number {
  return (slot === null ? deferCost : (costs[slot] ?? deferCost)).total
}
