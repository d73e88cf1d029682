import { type Outcome, refuse } from '../../outcome.ts'
import { assign, type Assignment, type SearchLimits } from '../assignment/assign.ts'
import { NONE } from '../assignment/places.ts'
import type { SearchWatch } from '../round-plan/crew-plan.ts'
import { faultOfInput, type RepackBoundary, type RepackPlanInput, type SlotCost, type Trade } from './input.ts'
import { RepackLoad } from './load.ts'
import { type InfeasiblePin, settlePins } from './pins.ts'
import { type PlanProblem, problemOf } from './plan-problem.ts'
import { explain, type Explained } from './reason.ts'

export interface PlacedBoundary extends Explained {
  readonly boundaryId: string
  /** Null waits. */
  readonly slotId: string | null
  readonly cost: SlotCost
}

export interface RepackPlan {
  /** In the order of the input. */
  readonly placed: readonly PlacedBoundary[]
  readonly infeasiblePins: readonly InfeasiblePin[]
  readonly cost: number
  /** No plan that keeps the same pins costs less. */
  readonly bound: number
  /** What a better plan could save at most, as a share of the cost. */
  readonly gap: number
  /** What it costs when one boundary after another takes its cheapest slot that has room, the most urgent first. */
  readonly greedyCost: number
  readonly slots: readonly { readonly slotId: string; readonly used: Readonly<Record<Trade, number>> }[]
  readonly stock: readonly StockUsed[]
  /** The search was told to stop before it had come to its end. */
  readonly isCutShort: boolean
}

export interface StockUsed {
  readonly itemId: string
  readonly beforeDay: number
  readonly used: number
  readonly amount: number
}

/**
 * Plans which valves are repacked in which slot, or wait: every boundary in one slot, as cheap together as can be found,
 * within the hours of each trade and the stock there is by then. Pins come first: each is kept, or named with the reason.
 *
 * @source SRC-734 planning of repacks (docs/sources.md)
 * @returns the plan, or `repacks/twice`, `repacks/slot-day`, `repacks/slot-order`, `repacks/slot-hours`, `repacks/stock`, `repacks/boundary-hours`, `repacks/uses`, `repacks/costs`, `repacks/slot-unknown`, `repacks/limits`
 * @example planRepacks({ slots: [{ id: 'week 3', isOutage: false, day: 14, hours: { fitting: 8, scaffolding: 0, isolating: 1 } }], boundaries: [{ id: 'B1', isolatesOnLine: true, hours: { fitting: 5, scaffolding: 0, isolating: 1 }, uses: [], costs: [{ chance: 1, leaks: 0, waste: 2, total: 3 }], deferCost: { chance: 9, leaks: 0, waste: 0, total: 9 }, pin: null, excluded: [], closedSlots: [] }], stockLimits: [] }, { solve: null, seconds: 0, relativeGap: 0 }).placed[0].slotId // → 'week 3'
 */
export function planRepacks(input: RepackPlanInput, limits: SearchLimits, watch: SearchWatch = {}): Outcome<RepackPlan> {
  const fault = faultOfInput(input) ?? faultOfLimits(limits)
  if (fault) return fault
  const load = new RepackLoad(input)
  const { kept, infeasible } = settlePins(input, load)
  const free = [...input.boundaries.keys()].filter((at) => input.boundaries[at]?.pin === null)
  const model = problemOf(input, load, free)
  if (!model.ok) return model
  const found = assign(model.problem, limits, watch)
  const slotOf = placesOf(input, kept, model, found)
  for (const { at } of model.items) {
    const slot = slotOf[at] ?? null
    if (slot !== null) load.add(input.boundaries[at] as RepackBoundary, slot)
  }
  const placed = input.boundaries.map((boundary, at) => placedIn(input, load, boundary, slotOf[at] ?? null))
  const cost = placed.reduce((sum, each) => sum + each.cost.total, 0)
  // What pins cost is the same in every plan that keeps them.
  const pinned = cost - found.cost
  const bound = Math.min(cost, pinned + found.bound)
  return {
    ok: true,
    placed,
    infeasiblePins: infeasible,
    cost,
    bound,
    gap: cost > 0 ? (cost - bound) / cost : 0,
    greedyCost: pinned + found.greedyCost,
    slots: input.slots.map(({ id }, slot) => ({ slotId: id, used: load.usedOf(slot) })),
    stock: stockOf(input, load),
    isCutShort: found.isCutShort,
  }
}

function faultOfLimits({ seconds, relativeGap }: SearchLimits): ReturnType<typeof faultOfInput> {
  if (seconds >= 0 && relativeGap >= 0) return null
  return refuse('repacks/limits', 'limits', 'a search has 0 seconds or more, and ends at a gap of 0 or more')
}

/** By place in the input, the slot of each boundary. */
function placesOf(
  input: RepackPlanInput,
  kept: ReadonlyMap<number, number>,
  { items }: PlanProblem,
  { taken }: Assignment,
): readonly (number | null)[] {
  const slotOf: (number | null)[] = input.boundaries.map((_, at) => kept.get(at) ?? null)
  for (const [item, { at, slots }] of items.entries()) slotOf[at] = slots[taken[item] ?? NONE] ?? null
  return slotOf
}

function placedIn(input: RepackPlanInput, load: RepackLoad, boundary: RepackBoundary, slot: number | null): PlacedBoundary {
  return {
    boundaryId: boundary.id,
    slotId: slot === null ? null : (input.slots[slot]?.id ?? null),
    cost: (slot === null ? null : boundary.costs[slot]) ?? boundary.deferCost,
    ...explain(input, load, boundary, slot),
  }
}

/** What placed boundaries use of the stock, limit by limit. */
export function stockOf({ stockLimits }: RepackPlanInput, load: RepackLoad): readonly StockUsed[] {
  const used = load.stockUsed
  return stockLimits.map(({ itemId, beforeDay, amount }, limit) => ({ itemId, beforeDay, used: used[limit] ?? 0, amount }))
}
