import { Ascent } from './ascent.ts'
import { cheapest, priceChoices } from './priced-cost.ts'
import type { AssignmentProblem } from './problem.ts'

/** No assignment of all items costs less than the bound. */
export interface ProvenBound {
  readonly bound: number
  /** By choice, how much more than the bound an assignment with it costs at least. */
  readonly losses: Float64Array
}

/** What a search for a bound is told, and asks. */
export interface BoundSearch {
  readonly steps: number
  /** Told ten steps apart where the search stands, to find an assignment there; gives the least cost known, or Infinity. */
  readonly bestCost: (prices: Float64Array, picked: Int32Array | null) => number
  /** Share of the best cost from the bound at which there is no more to win. */
  readonly relativeGap: number
  readonly isOver: (share: number) => boolean
}

export const STEPS_BETWEEN = 10

/**
 * Prices for resources: what more is wanted of than there is gets dearer, what is left over cheaper.
 *
 *     bound = Σ least (cost + price × use) over the choices of each item − Σ price × capacity
 *
 * holds for all prices of 0 or more, so the best one seen bounds the problem from below.
 */
export function boundByPrices(problem: AssignmentProblem, search: BoundSearch): ProvenBound & { readonly prices: Float64Array } {
  const nought = new Float64Array(problem.capacities.length)
  const ascent = new Ascent(nought, nought)
  const priced = new Float64Array(problem.cost.length)
  const excess = new Float64Array(nought.length)
  let known = Infinity
  for (let step = 0; step < search.steps; step += 1) {
    const bound = boundAt(problem, ascent.multipliers, priced, excess)
    if (step % STEPS_BETWEEN === 0) known = Math.min(known, search.bestCost(ascent.multipliers, null))
    if (!ascent.climb(bound, excess, known)) break
    if (known - ascent.bound <= search.relativeGap * Math.abs(known)) break
    if (search.isOver((step + 1) / search.steps)) break
  }
  search.bestCost(ascent.best, null)
  return { prices: ascent.best, bound: ascent.bound, losses: lossesAt(problem, ascent.best) }
}

function lossesAt(problem: AssignmentProblem, prices: Float64Array): Float64Array {
  const losses = new Float64Array(problem.cost.length)
  priceChoices(problem, prices, losses)
  for (let item = 0; item < problem.names.length; item += 1) {
    const own = losses.subarray(problem.firstChoice[item], problem.firstChoice[item + 1])
    const least = own.reduce((sofar, price) => Math.min(sofar, price), Infinity)
    for (const [at, price] of own.entries()) own[at] = price - least
  }
  return losses
}

/** The bound these prices give, and by resource what is wanted beyond the capacity. */
function boundAt(problem: AssignmentProblem, prices: Float64Array, priced: Float64Array, excess: Float64Array): number {
  const { names, firstUse, resource, amount, capacities } = problem
  priceChoices(problem, prices, priced)
  let bound = 0
  for (let which = 0; which < capacities.length; which += 1) {
    excess[which] = -(capacities[which] as number)
    bound -= (prices[which] as number) * (capacities[which] as number)
  }
  for (let item = 0; item < names.length; item += 1) {
    const choice = cheapest(problem, priced, item)
    bound += priced[choice] as number
    const end = firstUse[choice + 1] as number
    for (let use = firstUse[choice] as number; use < end; use += 1) {
      const which = resource[use] as number
      excess[which] = (excess[which] as number) + (amount[use] as number)
    }
  }
  return bound
}
