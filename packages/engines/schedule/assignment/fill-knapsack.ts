import type { Knapsack } from './knapsacks.ts'

/** What a knapsack is best filled with. */
export interface Filled {
  /** No filling is worth more. */
  readonly worth: number
  /** Places in the knapsack's list of choices that are in it, each with the share of it. */
  readonly chosen: readonly { readonly at: number; readonly share: number }[]
  /** Steps it took. */
  readonly work: number
}

type Steps = NonNullable<Knapsack['steps']>

/** @param profits by place in the knapsack's list of choices; what is not above 0 is left out */
export function fillKnapsack(knapsack: Knapsack, profits: Float64Array): Filled {
  const { steps, weights, capacity } = knapsack
  return steps ? filledBySteps(steps, profits) : filledByShares(sorted(profits, weights, capacity), profits, weights, capacity)
}

/**
 * What is lost, at least, when a choice has to be in a knapsack: by place in its list of choices, not below 0. By steps, the
 * rest might hold the same choice once more: then less is lost than in truth.
 */
export function lossesOfChoices({ steps, weights, capacity }: Knapsack, profits: Float64Array): Float64Array {
  if (steps) {
    const worth = new Filling(steps, sorted(profits, steps.weights, steps.capacity), profits, steps.capacity).worth
    const most = worth[steps.capacity] as number
    return profits.map((profit, at) => {
      const left = steps.capacity - (steps.weights[at] as number)
      return left < 0 ? Infinity : Math.max(0, most - (worth[left] as number) - profit)
    })
  }
  const { lastRate } = filledByShares(sorted(profits, weights, capacity), profits, weights, capacity)
  return profits.map((profit, at) => Math.max(0, lastRate * (weights[at] as number) - profit))
}

/** Places worth taking, the most profit for its weight first. */
function sorted(profits: Float64Array, weights: ArrayLike<number>, capacity: number): readonly number[] {
  const good: number[] = []
  for (let at = 0; at < profits.length; at += 1)
    if ((profits[at] as number) > 0 && (weights[at] as number) <= capacity) good.push(at)
  const rate = (at: number) => (profits[at] as number) / (weights[at] as number)
  return good.toSorted((one, other) => rate(other) - rate(one) || one - other)
}

/** In this order, the last one in part. */
function filledByShares(
  order: readonly number[],
  profits: Float64Array,
  weights: ArrayLike<number>,
  capacity: number,
): Filled & { readonly lastRate: number } {
  const chosen: { at: number; share: number }[] = []
  let worth = 0
  let room = capacity
  for (const at of order) {
    const weight = weights[at] as number
    const share = Math.min(1, room / weight)
    chosen.push({ at, share })
    worth += share * (profits[at] as number)
    room -= share * weight
    if (share < 1) return { worth, chosen, work: order.length, lastRate: (profits[at] as number) / weight }
  }
  return { worth, chosen, work: order.length, lastRate: 0 }
}

/** Exactly: what must be in or out is decided by the filling by shares, the rest by dynamic programming over the steps. */
function filledBySteps(steps: Steps, profits: Float64Array): Filled {
  const order = sorted(profits, steps.weights, steps.capacity)
  const byShares = filledByShares(order, profits, steps.weights, steps.capacity)
  if (byShares.lastRate === 0) return byShares
  const slack = byShares.worth - worthOfWhole(order, profits, steps) + OFF_BY * (1 + byShares.worth)
  const sure: number[] = []
  const open: number[] = []
  let room = steps.capacity
  const inPart = byShares.chosen.length - 1
  for (const [place, at] of order.entries()) {
    const above = (profits[at] as number) - byShares.lastRate * (steps.weights[at] as number)
    if (place < inPart && above > slack) {
      sure.push(at)
      room -= steps.weights[at] as number
    } else if (place <= inPart || above >= -slack) open.push(at)
  }
  const filling = new Filling(steps, open, profits, room)
  const whole = [...sure, ...filling.best()]
  return {
    worth: whole.reduce((sum, at) => sum + (profits[at] as number), 0),
    chosen: whole.map((at) => ({ at, share: 1 })),
    work: order.length + open.length * (room + 1),
  }
}

const OFF_BY = 1e-9

/** What whole things are worth that go in one after another, in this order, where there is room. */
function worthOfWhole(order: readonly number[], profits: Float64Array, { weights, capacity }: Steps): number {
  let room = capacity
  let worth = 0
  for (const at of order) {
    if ((weights[at] as number) > room) continue
    room -= weights[at] as number
    worth += profits[at] as number
  }
  return worth
}

/** Dynamic programming over the steps of a capacity. */
class Filling {
  /** By room, the most that fits into it is worth. */
  readonly worth: Float64Array
  readonly #weights: Int32Array
  readonly #things: readonly number[]
  readonly #isIn: Uint8Array

  constructor({ weights }: Steps, things: readonly number[], profits: Float64Array, capacity: number) {
    const width = capacity + 1
    const worth = new Float64Array(width)
    const isIn = new Uint8Array(things.length * width)
    for (let row = 0; row < things.length; row += 1) {
      const at = things[row] as number
      const weight = weights[at] as number
      const profit = profits[at] as number
      for (let room = capacity; room >= weight; room -= 1) {
        const value = (worth[room - weight] as number) + profit
        if (value <= (worth[room] as number)) continue
        worth[room] = value
        isIn[row * width + room] = 1
      }
    }
    this.worth = worth
    this.#weights = weights
    this.#things = things
    this.#isIn = isIn
  }

  /** What fills the whole capacity best. */
  best(): readonly number[] {
    const width = this.worth.length
    const chosen: number[] = []
    let room = width - 1
    for (let row = this.#things.length - 1; row >= 0; row -= 1) {
      if (!this.#isIn[row * width + room]) continue
      const at = this.#things[row] as number
      chosen.push(at)
      room -= this.#weights[at] as number
    }
    return chosen
  }
}
