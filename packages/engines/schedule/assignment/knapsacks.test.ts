import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fillKnapsack, lossesOfChoices } from './fill-knapsack.ts'
import { chooseKnapsacks, type Knapsack } from './knapsacks.ts'
import { AssignmentBuilder } from './problem.ts'
import { withReachableCapacities } from './reachable-capacity.ts'

/** Each item may wait, or use one of the resources with its amount. */
function problemOf(capacities: readonly number[], amounts: readonly number[]) {
  const builder = new AssignmentBuilder(capacities)
  for (const [item, amount] of amounts.entries()) {
    builder.item(`item ${item}`)
    builder.choice(9)
    for (const resource of capacities.keys()) {
      builder.choice(1)
      builder.use(resource, amount)
    }
  }
  const built = builder.build()
  if (!built.ok) throw new Error(built.problem.detail)
  return built.problem
}

/** The most a filling is worth, with the choice at a place in it if one is named. */
function mostWorth({ capacity, weights }: Knapsack, profits: readonly number[], needed: number | null): number {
  let most = needed === null ? 0 : -Infinity
  for (let filling = 0; filling < 2 ** profits.length; filling += 1) {
    const chosen = profits.flatMap((_, at) => ((filling >> at) & 1 ? [at] : []))
    if (needed !== null && !chosen.includes(needed)) continue
    if (chosen.reduce((sum, at) => sum + weights[at]!, 0) > capacity + 1e-9) continue
    most = Math.max(
      most,
      chosen.reduce((sum, at) => sum + profits[at]!, 0),
    )
  }
  return most
}

const someKnapsack = fc.record({
  capacity: fc.constantFrom(1, 4, 7.5, 12),
  things: fc.array(fc.tuple(fc.constantFrom(0.5, 1, 2.5, 3, 4), fc.integer({ min: -3, max: 12 })), {
    minLength: 1,
    maxLength: 8,
  }),
  isByShares: fc.boolean(),
})

describe('a knapsack', () => {
  it('is filled for all it can be worth, and says no more than is lost with any choice', () => {
    fc.assert(
      fc.property(someKnapsack, ({ capacity, things, isByShares }) => {
        const weights = things.map(([weight]) => weight)
        const profits = things.map(([, profit]) => profit)
        const steps = { weights: Int32Array.from(weights, (weight) => weight * 2), capacity: capacity * 2 }
        const knapsack: Knapsack = {
          resource: 0,
          capacity,
          choices: Int32Array.from(weights.keys()),
          weights: Float64Array.from(weights),
          steps: isByShares ? null : steps,
        }
        const filled = fillKnapsack(knapsack, Float64Array.from(profits))
        const losses = lossesOfChoices(knapsack, Float64Array.from(profits))
        const most = mostWorth(knapsack, profits, null)
        if (isByShares) expect(filled.worth).toBeGreaterThanOrEqual(most - 1e-9)
        else expect(filled.worth).toBeCloseTo(most, 9)
        expect(filled.chosen.reduce((sum, { at, share }) => sum + share * profits[at]!, 0)).toBeCloseTo(filled.worth, 9)
        expect(filled.chosen.reduce((sum, { at, share }) => sum + share * weights[at]!, 0)).toBeLessThanOrEqual(capacity + 1e-9)
        for (const at of profits.keys()) {
          const forced = mostWorth(knapsack, profits, at)
          expect(filled.worth - losses[at]!).toBeGreaterThanOrEqual(forced - 1e-9)
          expect(losses[at]).toBeGreaterThanOrEqual(0)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('is a resource of which no choice uses two', () => {
    const builder = new AssignmentBuilder([4, 4, 4])
    for (let item = 0; item < 4; item += 1) {
      builder.item(`item ${item}`)
      for (const pair of [[0, 1] as const, [1, 2] as const]) {
        builder.choice(item)
        for (const resource of pair) builder.use(resource, 3)
      }
    }
    const built = builder.build()
    if (!built.ok) throw new Error(built.problem.detail)
    const resourcesAt = (...prices: number[]) =>
      chooseKnapsacks(built.problem, Float64Array.from(prices)).map(({ resource }) => resource)
    expect(resourcesAt(1, 5, 1)).toEqual([1])
    expect(new Set(resourcesAt(3, 1, 3))).toEqual(new Set([0, 2]))
  })

  it('is filled in whole steps where few things fit, and by shares where many do', () => {
    const stepsWith = (capacity: number, amounts: readonly number[]) =>
      chooseKnapsacks(problemOf([capacity], amounts), Float64Array.of(1)).map(({ steps }) => steps?.capacity ?? null)
    expect(stepsWith(10.4, [2, 4])).toEqual([10])
    expect(stepsWith(10.4, [2.5, 4])).toEqual([20])
    // By 1024 parts of the capacity where there is no usual step, weights rounded down.
    expect(stepsWith(10.4, [Math.PI, 4])).toEqual([1024])
    expect(stepsWith(1000, [2, 4])).toEqual([null])
    expect(stepsWith(0, [Math.PI])).toEqual([0])
  })
})

describe('a capacity', () => {
  const reachable = (capacity: number, amounts: readonly number[]) =>
    withReachableCapacities(problemOf([capacity], amounts)).capacities[0]

  it('is brought down to what sums of amounts reach: works of 5, 8 and 11 hours fill 11 of 12, and 16 of 17', () => {
    expect([reachable(12, [5, 8, 11]), reachable(17.9, [5, 8, 11]), reachable(4, [5, 8, 11])]).toEqual([11, 16, 0])
  })

  it('stays as it is where amounts have no usual step', () => {
    expect([reachable(12, [Math.E]), reachable(12, [])]).toEqual([12, 12])
  })

  it('is reached in quarters of an hour too', () => expect(reachable(3.1, [1.25, 0.5])).toBe(3))
})
