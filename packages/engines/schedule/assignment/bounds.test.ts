import fc from 'fast-check'
import { expect, it } from 'vitest'
import { boundByKnapsacks } from './knapsack-bound.ts'
import { chooseKnapsacks } from './knapsacks.ts'
import { boundByPrices, type BoundSearch, type ProvenBound } from './price-bound.ts'
import { AssignmentBuilder, type AssignmentProblem } from './problem.ts'

/** Each item waits, or uses one resource of its own amount and now and then a second. */
const someProblem = fc
  .record({
    capacities: fc.array(fc.constantFrom(1, 2, 3.5, 5, 7), { minLength: 2, maxLength: 3 }),
    items: fc.array(
      fc.array(fc.record({ cost: fc.nat(9), first: fc.nat(2), second: fc.nat(5), amount: fc.constantFrom(0.5, 1, 2, 2.7, 3) }), {
        minLength: 1,
        maxLength: 3,
      }),
      {
        minLength: 1,
        maxLength: 6,
      },
    ),
  })
  .map(({ capacities, items }) => {
    const builder = new AssignmentBuilder(capacities)
    for (const [item, choices] of items.entries()) {
      builder.item(`item ${item}`)
      builder.choice(10)
      for (const { cost, first, second, amount } of choices) {
        builder.choice(cost)
        if (first < capacities.length) builder.use(first, amount)
        if (second < capacities.length) builder.use(second, amount / 2)
      }
    }
    const built = builder.build()
    if (!built.ok) throw new Error(built.problem.detail)
    return built.problem
  })

/** By choice, the least that any assignment with it costs; Infinity when there is none. */
function leastWith({ names, firstChoice, cost, firstUse, resource, amount, capacities }: AssignmentProblem): Float64Array {
  const least = new Float64Array(cost.length).fill(Infinity)
  const room = capacities.slice()
  const taken: number[] = []
  const tryItem = (item: number, sum: number) => {
    if (item === names.length) {
      for (const choice of taken) least[choice] = Math.min(least[choice]!, sum)
      return
    }
    for (let choice = firstChoice[item]!; choice < firstChoice[item + 1]!; choice += 1) {
      const uses = Array.from({ length: firstUse[choice + 1]! - firstUse[choice]! }, (_, at) => firstUse[choice]! + at)
      for (const use of uses) room[resource[use]!]! -= amount[use]!
      taken.push(choice)
      if (room.every((left) => left >= -1e-9)) tryItem(item + 1, sum + cost[choice]!)
      taken.pop()
      for (const use of uses) room[resource[use]!]! += amount[use]!
    }
  }
  tryItem(0, 0)
  return least
}

function expectBelow(least: Float64Array, { bound, losses }: ProvenBound): void {
  expect(bound).toBeLessThanOrEqual(Math.min(...least) + 1e-9)
  for (const [choice, cost] of least.entries()) expect(bound + losses[choice]!).toBeLessThanOrEqual(cost + 1e-9)
}

const searchTo = (known: number): BoundSearch => ({ steps: 60, bestCost: () => known, relativeGap: 0, isOver: () => false })

it('bounds are below every assignment, and with what a choice adds below every assignment with it', () => {
  let closer = 0
  fc.assert(
    fc.property(someProblem, (problem) => {
      const least = leastWith(problem)
      const search = searchTo(Math.min(...least))
      const byPrices = boundByPrices(problem, search)
      expectBelow(least, byPrices)
      const knapsacks = chooseKnapsacks(problem, byPrices.prices)
      const byKnapsacks = boundByKnapsacks(problem, knapsacks, byPrices.prices, search)
      expectBelow(least, byKnapsacks)
      expect(byKnapsacks.bound).toBeGreaterThanOrEqual(byPrices.bound - 1e-6)
      if (byKnapsacks.bound > byPrices.bound + 0.01) closer += 1
    }),
    { numRuns: 300 },
  )
  expect(closer).toBeGreaterThan(30)
})
