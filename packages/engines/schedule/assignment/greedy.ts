import { cheapest, priceChoices } from './priced-cost.ts'
import { NONE, Places } from './places.ts'
import type { AssignmentProblem } from './problem.ts'

/**
 * Lets items take what was picked for them, where that fits, and then one item after another the cheapest of its choices
 * that fits, at these prices. First comes who would lose most by going without what it wants, for the room it takes.
 */
export function greedyPlaces(problem: AssignmentProblem, prices: Float64Array, picked: Int32Array | null = null): Places {
  const places = new Places(problem)
  const priced = new Float64Array(problem.cost.length)
  priceChoices(problem, prices, priced)
  const urgency = problem.names.map((_, item) => urgencyOf(problem, priced, item))
  const order = problem.names
    .map((_, item) => item)
    .toSorted((one, other) => (urgency[other] ?? 0) - (urgency[one] ?? 0) || one - other)
  if (picked)
    for (const item of order)
      if (picked[item] !== NONE && places.fits(picked[item] as number)) places.take(item, picked[item] as number)
  for (const item of order) if (places.taken[item] === NONE) places.take(item, cheapestThatFits(places, priced, item))
  return places
}

function cheapestThatFits(places: Places, priced: Float64Array, item: number): number {
  const { firstChoice } = places.problem
  let best = NONE
  let least = Infinity
  for (let choice = firstChoice[item] as number; choice < (firstChoice[item + 1] as number); choice += 1) {
    const price = priced[choice] as number
    if (price < least && places.fits(choice)) {
      best = choice
      least = price
    }
  }
  return best
}

/** What an item loses without its cheapest choice: beside one that uses nothing, or else its dearest; by the share of capacity. */
function urgencyOf(problem: AssignmentProblem, priced: Float64Array, item: number): number {
  const { firstChoice, firstUse, resource, amount, capacities } = problem
  const best = cheapest(problem, priced, item)
  let free = Infinity
  let dearest = -Infinity
  for (let choice = firstChoice[item] as number; choice < (firstChoice[item + 1] as number); choice += 1) {
    const price = priced[choice] as number
    dearest = Math.max(dearest, price)
    if (firstUse[choice] === firstUse[choice + 1]) free = Math.min(free, price)
  }
  let share = 0
  for (let use = firstUse[best] as number; use < (firstUse[best + 1] as number); use += 1)
    share += (amount[use] as number) / Math.max(capacities[resource[use] as number] as number, NEARLY_NOTHING)
  const loss = (free < Infinity ? free : dearest) - (priced[best] as number)
  return loss / Math.max(share, NEARLY_NOTHING)
}

const NEARLY_NOTHING = 1e-9
