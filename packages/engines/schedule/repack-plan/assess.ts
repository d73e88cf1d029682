import type { Outcome } from '../../outcome.ts'
import { faultOfInput, type RepackPlanInput, type RepackSlot, type SlotCost, type Trade, trades } from './input.ts'
import { RepackLoad } from './load.ts'
import { type ClosedBecause, closedBecause } from './open-slots.ts'
import { stockOf, type StockUsed } from './plan.ts'
import { sumOfCosts } from './slot-cost.ts'

export interface Assessment {
  /** Of all boundaries; what cannot be where it was put counts as waiting. */
  readonly cost: SlotCost
  /** Boundaries that cannot be in their slot, whatever room there is. */
  readonly cannotBe: readonly {
    readonly boundaryId: string
    readonly slotId: string
    readonly why: ClosedBecause | 'no such slot'
  }[]
  readonly slots: readonly { readonly slotId: string; readonly used: Readonly<Record<Trade, number>> }[]
  /** Slots whose boundaries need more hours than there are. */
  readonly overHours: readonly { readonly slotId: string; readonly trade: Trade; readonly used: number; readonly hours: number }[]
  readonly stock: readonly StockUsed[]
  /** Limits of stock that are used beyond what there is. */
  readonly stockShort: readonly StockUsed[]
}

/** Share of an amount that sums may be off by: a solver's answer is, by as much. */
const OFF_BY = 1e-6

/**
 * What a placement costs and what breaks, as it stands: a plan made before, held against an input that has changed.
 *
 * @param placement by boundary its slot; null, or no word of it, waits
 * @returns the assessment, or a fault of the input as `planRepacks` names it
 * @example assessPlacement({ slots: [], boundaries: [], stockLimits: [] }, new Map()).cost.total // → 0
 */
export function assessPlacement(input: RepackPlanInput, placement: ReadonlyMap<string, string | null>): Outcome<Assessment> {
  const fault = faultOfInput(input)
  if (fault) return fault
  const slotAt = new Map(input.slots.map(({ id }, slot) => [id, slot]))
  const load = new RepackLoad(input)
  const cannotBe: Assessment['cannotBe'][number][] = []
  const costs = input.boundaries.map((boundary) => {
    const slotId = placement.get(boundary.id) ?? null
    if (slotId === null) return boundary.deferCost
    const slot = slotAt.get(slotId)
    const why = slot === undefined ? 'no such slot' : closedBecause(boundary, input.slots[slot] as RepackSlot)
    if (slot === undefined || why) {
      cannotBe.push({ boundaryId: boundary.id, slotId, why: why ?? 'no such slot' })
      return boundary.deferCost
    }
    load.add(boundary, slot)
    return boundary.costs[slot] ?? boundary.deferCost
  })
  const stock = stockOf(input, load)
  return {
    ok: true,
    cost: sumOfCosts(costs),
    cannotBe,
    slots: input.slots.map(({ id }, slot) => ({ slotId: id, used: load.usedOf(slot) })),
    overHours: overHours(input, load),
    stock,
    stockShort: stock.filter(({ used, amount }) => isOver(used, amount)),
  }
}

function overHours({ slots }: RepackPlanInput, load: RepackLoad): Assessment['overHours'] {
  return slots.flatMap(({ id, hours }, slot) => {
    const used = load.usedOf(slot)
    return trades
      .filter((trade) => isOver(used[trade], hours[trade]))
      .map((trade) => ({ slotId: id, trade, used: used[trade], hours: hours[trade] }))
  })
}

function isOver(used: number, all: number): boolean {
  return used > all + OFF_BY * Math.max(1, all)
}
