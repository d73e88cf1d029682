import { type RepackBoundary, type RepackPlanInput, type RepackSlot, type Trade, trades } from './input.ts'

/** What a slot is short of: a trade, or an item that comes later. */
export type Shortage = { readonly trade: Trade } | { readonly itemId: string }

/** Share of an amount that sums may be off by. */
const OFF_BY = 1e-9

/** Hours of the slots and stock that placed boundaries use. */
export class RepackLoad {
  readonly #input: RepackPlanInput
  /** By slot, then by trade in their order. */
  readonly #hours: readonly Float64Array[]
  /** By limit of stock. */
  readonly #stock: Float64Array
  readonly #limitsOf = new Map<string, number[]>()

  constructor(input: RepackPlanInput) {
    this.#input = input
    this.#hours = input.slots.map(() => new Float64Array(trades.length))
    this.#stock = new Float64Array(input.stockLimits.length)
    for (const [limit, { itemId }] of input.stockLimits.entries())
      this.#limitsOf.set(itemId, [...(this.#limitsOf.get(itemId) ?? []), limit])
  }

  /** Which limits of stock a boundary counts to in a slot, and with how much in all. */
  stockUses({ uses }: RepackBoundary, slot: number): readonly { readonly limit: number; readonly amount: number }[] {
    const { slots, stockLimits } = this.#input
    const day = slots[slot]?.day ?? Infinity
    const byLimit = new Map<number, number>()
    for (const { itemId, amount } of uses) {
      for (const limit of this.#limitsOf.get(itemId) ?? [])
        if (amount > 0 && day < (stockLimits[limit]?.beforeDay ?? -Infinity))
          byLimit.set(limit, (byLimit.get(limit) ?? 0) + amount)
    }
    return Array.from(byLimit, ([limit, amount]) => ({ limit, amount }))
  }

  add(boundary: RepackBoundary, slot: number, sign: 1 | -1 = 1): void {
    const hours = this.#hours[slot] as Float64Array
    for (const [index, trade] of trades.entries()) hours[index] = (hours[index] as number) + sign * boundary.hours[trade]
    for (const { limit, amount } of this.stockUses(boundary, slot))
      this.#stock[limit] = (this.#stock[limit] as number) + sign * amount
  }

  /** The first thing a slot lacks for one more boundary, stock before hours since hours can be found; null where it fits. */
  shortageFor(boundary: RepackBoundary, slot: number): Shortage | null {
    const { stockLimits, slots } = this.#input
    for (const { limit, amount } of this.stockUses(boundary, slot)) {
      const { itemId, amount: all } = stockLimits[limit] as (typeof stockLimits)[number]
      if (isOver((this.#stock[limit] as number) + amount, all)) return { itemId }
    }
    const { hours } = slots[slot] as RepackSlot
    for (const [index, trade] of trades.entries()) {
      const needed = boundary.hours[trade]
      if (needed > 0 && isOver((this.#hours[slot]?.[index] as number) + needed, hours[trade])) return { trade }
    }
    return null
  }

  usedOf(slot: number): Record<Trade, number> {
    const [fitting = 0, scaffolding = 0, isolating = 0] = this.#hours[slot] ?? []
    return { fitting, scaffolding, isolating }
  }

  /** By limit of stock. */
  get stockUsed(): readonly number[] {
    return [...this.#stock]
  }
}

function isOver(used: number, all: number): boolean {
  return used > all + OFF_BY * Math.max(1, all)
}
