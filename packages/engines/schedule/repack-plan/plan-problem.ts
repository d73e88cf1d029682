import type { Outcome } from '../../outcome.ts'
import { AssignmentBuilder, type AssignmentProblem } from '../assignment/problem.ts'
import { type RepackBoundary, type RepackPlanInput, type RepackSlot, trades } from './input.ts'
import type { RepackLoad } from './load.ts'
import { closedBecause } from './open-slots.ts'

export interface PlanProblem {
  readonly problem: AssignmentProblem
  /** By item, its place in the input, and by choice the slot; null waits. */
  readonly items: readonly { readonly at: number; readonly slots: readonly (number | null)[] }[]
}

/**
 * Boundaries that are free to be placed, as items of an assignment: the hours of each trade in each slot, and stock, are
 * its resources, less what pins take. A slot that costs more than to wait is no choice, since to wait uses nothing.
 */
export function problemOf(input: RepackPlanInput, load: RepackLoad, free: readonly number[]): Outcome<PlanProblem> {
  const builder = new AssignmentBuilder(resourcesLeft(input, load))
  const items = free.map((at) => {
    const boundary = input.boundaries[at] as RepackBoundary
    const slots = slotsWorthIt(boundary, input, load)
    builder.item(boundary.id)
    builder.choice(boundary.deferCost.total)
    for (const slot of slots) {
      builder.choice(boundary.costs[slot]?.total ?? NaN)
      for (const [index, trade] of trades.entries()) builder.use(slot * trades.length + index, boundary.hours[trade])
      for (const { limit, amount } of load.stockUses(boundary, slot))
        builder.use(input.slots.length * trades.length + limit, amount)
    }
    return { at, slots: [null, ...slots] }
  })
  const built = builder.build()
  return built.ok ? { ok: true, problem: built.problem, items } : built
}

function slotsWorthIt(boundary: RepackBoundary, { slots }: RepackPlanInput, load: RepackLoad): readonly number[] {
  const worthIt: number[] = []
  for (const [slot, { total }] of boundary.costs.entries()) {
    const isWorthIt = total < boundary.deferCost.total && closedBecause(boundary, slots[slot] as RepackSlot) === null
    if (isWorthIt && load.shortageFor(boundary, slot) === null) worthIt.push(slot)
  }
  return worthIt
}

/** Hours of each trade, slot by slot, then stock limit by limit. */
function resourcesLeft({ slots, stockLimits }: RepackPlanInput, load: RepackLoad): readonly number[] {
  const left = (all: number, used: number) => Math.max(0, all - used)
  const hours = slots.flatMap(({ hours: own }, slot) => {
    const used = load.usedOf(slot)
    return trades.map((trade) => left(own[trade], used[trade]))
  })
  const used = load.stockUsed
  return [...hours, ...stockLimits.map(({ amount }, limit) => left(amount, used[limit] ?? 0))]
}
