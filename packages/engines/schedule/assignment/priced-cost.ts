import type { AssignmentProblem } from './problem.ts'

/** What each choice costs with what it uses at these prices, written to `priced`. */
export function priceChoices(
  { cost, firstUse, resource, amount }: AssignmentProblem,
  prices: Float64Array,
  priced: Float64Array,
): void {
  for (let choice = 0; choice < cost.length; choice += 1) {
    let sum = cost[choice] as number
    const end = firstUse[choice + 1] as number
    for (let use = firstUse[choice] as number; use < end; use += 1)
      sum += (amount[use] as number) * (prices[resource[use] as number] as number)
    priced[choice] = sum
  }
}

/** The choice of an item that costs least. */
export function cheapest({ firstChoice }: AssignmentProblem, priced: Float64Array, item: number): number {
  let best = firstChoice[item] as number
  const end = firstChoice[item + 1] as number
  for (let choice = best + 1; choice < end; choice += 1) if ((priced[choice] as number) < (priced[best] as number)) best = choice
  return best
}
