import type { SearchWatch } from '../round-plan/crew-plan.ts'
import { BestKnown } from './best-known.ts'
import { greedyPlaces } from './greedy.ts'
import { choicesByCost, Improvement } from './improve.ts'
import { boundByKnapsacks } from './knapsack-bound.ts'
import { chooseKnapsacks } from './knapsacks.ts'
import type { SolveMilp } from './milp.ts'
import { NONE, type Places } from './places.ts'
import type { AssignmentProblem } from './problem.ts'
import { withReachableCapacities } from './reachable-capacity.ts'
import { solveFurther } from './solve-further.ts'
import { type BoundSearch, type ProvenBound, boundByPrices } from './price-bound.ts'

export interface SearchLimits {
  /** Null goes without: by prices, shifts and displacements alone. */
  readonly solve: SolveMilp | null
  /** What the solver may take, in all. */
  readonly seconds: number
  /** Share of the cost from the bound at which the search ends. */
  readonly relativeGap: number
}

export interface Assignment {
  /** By item the choice it takes, counted 0, 1, 2 … within the item; -1 where no choice fits. */
  readonly taken: Int32Array
  /** Of the choices taken. */
  readonly cost: number
  /** No assignment of all items costs less. */
  readonly bound: number
  /** What it costs when one item after another takes the cheapest that fits; Infinity when that leaves items without. */
  readonly greedyCost: number
  /** Items for which nothing that fits was found, by name. */
  readonly notPlaced: readonly string[]
  readonly isCutShort: boolean
}

const STEPS_OF_PRICES = 300
const STEPS_OF_KNAPSACKS = 600
/** Where the parts of the search end, as shares of it. */
const PRICES_END = 0.15
const KNAPSACKS_END = 0.35
const MOVES_END = 0.4
const LEAST_PROGRESS = 0.01

/**
 * Gives each item one of its choices, as cheap together as can be found, within the capacities. Bounds come from prices
 * of resources and from filling knapsacks; where they stand, greedy finds assignments that moves improve; a solver then
 * chooses anew among the choices that lose least, and proves a bound over all that can matter.
 *
 * @source SRC-738 Lagrangian bounds; SRC-739 knapsacks in assignments (docs/sources.md)
 * @returns the cheapest assignment found; the bound holds whatever the solver was given
 * @example assign({ names: ['A'], firstChoice: Int32Array.of(0, 2), cost: Float64Array.of(5, 3), firstUse: Int32Array.of(0, 0, 1), resource: Int32Array.of(0), amount: Float64Array.of(2), capacities: Float64Array.of(4) }, { solve: null, seconds: 0, relativeGap: 0 }).cost // → 3
 */
export function assign(problem: AssignmentProblem, limits: SearchLimits, watch: SearchWatch = {}): Assignment {
  return new Search(withReachableCapacities(problem), limits, watch).run()
}

class Search {
  readonly #problem: AssignmentProblem
  readonly #limits: SearchLimits
  readonly #watch: SearchWatch
  readonly #sorted: Int32Array
  readonly #best: BestKnown
  #isCutShort = false
  #told = 0

  constructor(problem: AssignmentProblem, limits: SearchLimits, watch: SearchWatch) {
    this.#problem = problem
    this.#limits = limits
    this.#watch = watch
    this.#sorted = choicesByCost(problem)
    this.#best = new BestKnown(problem)
  }

  run(): Assignment {
    const greedy = greedyPlaces(this.#problem, new Float64Array(this.#problem.capacities.length))
    this.#best.offer(greedy)
    const bounds = this.#bounds()
    const moved = this.#best.copy()
    new Improvement(moved, this.#sorted).shiftAndDisplace(() => this.#isOver(MOVES_END))
    this.#best.offer(moved)
    const closest = Math.max(...bounds.map(({ bound }) => bound))
    const solved = this.#isOver(MOVES_END) ? closest : this.#solved(bounds)
    this.#watch.onProgress?.(1)
    return this.#result(Math.max(solved, closest), greedy)
  }

  /** Bounds, each with what taking a choice adds to it. */
  #bounds(): readonly ProvenBound[] {
    const search = (steps: number, from: number, to: number): BoundSearch => ({
      steps,
      relativeGap: this.#limits.relativeGap,
      bestCost: (prices, picked) => this.#repair(prices, picked),
      isOver: (share) => this.#isOver(from + share * (to - from)),
    })
    const byPrices = boundByPrices(this.#problem, search(STEPS_OF_PRICES, 0, PRICES_END))
    const knapsacks = chooseKnapsacks(this.#problem, byPrices.prices)
    if (this.#isCutShort || this.#best.isNear(byPrices.bound, this.#limits.relativeGap) || !knapsacks.some(({ steps }) => steps))
      return [byPrices]
    return [
      byPrices,
      boundByKnapsacks(this.#problem, knapsacks, byPrices.prices, search(STEPS_OF_KNAPSACKS, PRICES_END, KNAPSACKS_END)),
    ]
  }

  /** Lets greedy find an assignment at these prices. @returns the least cost known */
  #repair(prices: Float64Array, picked: Int32Array | null): number {
    const places = greedyPlaces(this.#problem, prices, picked)
    new Improvement(places, this.#sorted).shift()
    this.#best.offer(places)
    return this.#best.cost
  }

  /** Lets the solver go on, as far as there is one. @returns a bound of the whole problem */
  #solved(bounds: readonly ProvenBound[]): number {
    const { solve, seconds, relativeGap } = this.#limits
    if (!solve || !(seconds > 0)) return -Infinity
    const isOver = (share: number) => this.#isOver(MOVES_END + share * (1 - MOVES_END))
    return solveFurther(this.#best, bounds, { solve, seconds, relativeGap, sorted: this.#sorted, isOver })
  }

  #isOver(share: number): boolean {
    if (share >= this.#told + LEAST_PROGRESS) {
      this.#watch.onProgress?.(share)
      this.#told = share
    }
    this.#isCutShort ||= this.#watch.shouldStop?.() === true
    return this.#isCutShort
  }

  #result(bound: number, greedy: Places): Assignment {
    const { names, firstChoice } = this.#problem
    const { taken, cost } = this.#best.places
    return {
      taken: taken.map((choice, item) => (choice === NONE ? NONE : choice - (firstChoice[item] as number))),
      cost,
      bound: Math.min(bound, this.#best.cost),
      greedyCost: greedy.missing > 0 ? Infinity : greedy.cost,
      notPlaced: names.filter((_, item) => taken[item] === NONE),
      isCutShort: this.#isCutShort,
    }
  }
}
