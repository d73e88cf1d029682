import { Ascent } from './ascent.ts'
import { fillKnapsack, lossesOfChoices } from './fill-knapsack.ts'
import type { Knapsack } from './knapsacks.ts'
import { cheapest, priceChoices } from './priced-cost.ts'
import { NONE } from './places.ts'
import type { AssignmentProblem } from './problem.ts'
import { type BoundSearch, type ProvenBound, STEPS_BETWEEN } from './price-bound.ts'

/** Steps of filling, in all: a second or two. Of a large plant few rounds fit into that, of a small one all. */
const MOST_WORK = 500_000_000
const FEWEST_STEPS = 20

/**
 * A bound from filling knapsacks exactly: that each item is taken once is relaxed instead, each item offering a reward
 * for being taken, and a price for what all other resources are used.
 *
 *     bound = Σ rewards − Σ price × capacity − Σ most that (reward − cost − price × use) fills a knapsack with
 */
export function boundByKnapsacks(
  problem: AssignmentProblem,
  knapsacks: readonly Knapsack[],
  prices: Float64Array,
  search: BoundSearch,
): ProvenBound {
  const relaxed = new RelaxedProblem(problem, knapsacks, prices)
  const ascent = new Ascent(relaxed.start, relaxed.least)
  let known = search.bestCost(prices, null)
  const share = (step: number) => Math.max(step / search.steps, step < FEWEST_STEPS ? 0 : relaxed.work / MOST_WORK)
  for (let step = 0; share(step) < 1; step += 1) {
    const bound = relaxed.boundAt(ascent.multipliers)
    if (step % STEPS_BETWEEN === 0) known = Math.min(known, search.bestCost(prices, relaxed.picked))
    if (!ascent.climb(bound, relaxed.slope, known)) break
    if (known - ascent.bound <= search.relativeGap * Math.abs(known)) break
    if (search.isOver(Math.min(1, share(step + 1)))) break
  }
  return { bound: ascent.bound, losses: relaxed.lossesAt(ascent.best) }
}

class RelaxedProblem {
  /** Rewards of the items, then prices of the resources that are no knapsacks; what a knapsack is stays 0. */
  readonly start: Float64Array
  readonly least: Float64Array
  readonly slope: Float64Array
  work = 0
  /** By item, the cheapest choice it was picked with; NONE when it was not. */
  readonly picked: Int32Array
  readonly #problem: AssignmentProblem
  readonly #knapsacks: readonly Knapsack[]
  readonly #isKnapsack: Uint8Array
  readonly #itemOf: Int32Array
  readonly #priced: Float64Array
  /** Choices that use no knapsack. */
  readonly #outside: Int32Array
  readonly #profits: Float64Array

  constructor(problem: AssignmentProblem, knapsacks: readonly Knapsack[], prices: Float64Array) {
    const { names, firstChoice, cost, capacities } = problem
    this.#problem = problem
    this.#knapsacks = knapsacks
    this.#isKnapsack = new Uint8Array(capacities.length)
    const isInside = new Uint8Array(cost.length)
    for (const { resource, choices } of knapsacks) {
      this.#isKnapsack[resource] = 1
      for (const choice of choices) isInside[choice] = 1
    }
    this.#outside = Int32Array.from(isInside.keys()).filter((choice) => isInside[choice] === 0)
    this.#profits = new Float64Array(cost.length)
    this.#itemOf = new Int32Array(cost.length)
    for (let item = 0; item < names.length; item += 1) this.#itemOf.fill(item, firstChoice[item], firstChoice[item + 1])
    this.#priced = new Float64Array(cost.length)
    this.slope = new Float64Array(names.length + capacities.length)
    this.picked = new Int32Array(names.length)
    this.least = new Float64Array(this.slope.length).fill(-Infinity, 0, names.length)
    priceChoices(problem, prices, this.#priced)
    // What each item costs at the prices found before: from there on the bound is at least as high.
    const rewards = names.map((_, item) => this.#priced[cheapest(problem, this.#priced, item)] as number)
    this.start = Float64Array.from([...rewards, ...prices.map((price, resource) => (this.#isKnapsack[resource] ? 0 : price))])
  }

  boundAt(multipliers: Float64Array): number {
    return this.#fillAll(multipliers, null)
  }

  /** By choice, how much higher the bound is when it is taken. */
  lossesAt(multipliers: Float64Array): Float64Array {
    const losses = new Float64Array(this.#problem.cost.length)
    this.#fillAll(multipliers, losses)
    return losses
  }

  #fillAll(multipliers: Float64Array, losses: Float64Array | null): number {
    const problem = this.#problem
    const prices = multipliers.subarray(problem.names.length)
    priceChoices(problem, prices, this.#priced)
    this.picked.fill(NONE)
    let bound = 0
    for (let item = 0; item < problem.names.length; item += 1) {
      bound += multipliers[item] as number
      this.slope[item] = 1
    }
    for (const [resource, price] of prices.entries()) {
      const capacity = this.#isKnapsack[resource] ? 0 : (problem.capacities[resource] as number)
      bound -= price * capacity
      this.slope[problem.names.length + resource] = -capacity
    }
    for (const knapsack of this.#knapsacks) bound -= this.#fill(knapsack, multipliers, losses)
    return bound + this.#takeOutside(multipliers, losses)
  }

  /** @returns what the knapsack is worth when it is filled best */
  #fill(knapsack: Knapsack, rewards: Float64Array, losses: Float64Array | null): number {
    const { choices } = knapsack
    const profits = this.#profits.subarray(0, choices.length)
    for (let at = 0; at < choices.length; at += 1) {
      const choice = choices[at] as number
      profits[at] = (rewards[this.#itemOf[choice] as number] as number) - (this.#priced[choice] as number)
    }
    const { worth, chosen, work } = fillKnapsack(knapsack, profits)
    this.work += work
    for (const { at, share } of chosen) this.#pick(choices[at] as number, share)
    if (losses) for (const [at, loss] of lossesOfChoices(knapsack, profits).entries()) losses[choices[at] as number] = loss
    return worth
  }

  /** Choices that use no knapsack: the best of each item is taken where its reward is more than it costs. */
  #takeOutside(rewards: Float64Array, losses: Float64Array | null): number {
    const best = new Int32Array(this.#problem.names.length).fill(NONE)
    const cost = (choice: number) => (this.#priced[choice] as number) - (rewards[this.#itemOf[choice] as number] as number)
    for (const choice of this.#outside) {
      const item = this.#itemOf[choice] as number
      const before = best[item] as number
      if (cost(choice) < (before === NONE ? 0 : cost(before))) best[item] = choice
    }
    let sum = 0
    for (const choice of best) {
      if (choice === NONE) continue
      sum += cost(choice)
      this.#pick(choice, 1)
    }
    if (losses) {
      for (const choice of this.#outside) {
        const taken = best[this.#itemOf[choice] as number] as number
        losses[choice] = Math.max(0, cost(choice) - (taken === NONE ? 0 : cost(taken)))
      }
    }
    return sum
  }

  #pick(choice: number, share: number): void {
    const { names, cost, firstUse, resource, amount } = this.#problem
    const item = this.#itemOf[choice] as number
    this.slope[item] = (this.slope[item] as number) - share
    const before = this.picked[item] as number
    if (before === NONE || (cost[choice] as number) < (cost[before] as number)) this.picked[item] = choice
    for (let use = firstUse[choice] as number; use < (firstUse[choice + 1] as number); use += 1) {
      const which = resource[use] as number
      if (this.#isKnapsack[which]) continue
      const at = names.length + which
      this.slope[at] = (this.slope[at] as number) + share * (amount[use] as number)
    }
  }
}
