import type { AssignmentProblem } from './problem.ts'
import { commonStep, stepsIn } from './whole-steps.ts'

/** A resource that is filled as a whole: which choices use it, and how much each. */
export interface Knapsack {
  readonly resource: number
  readonly capacity: number
  readonly choices: Int32Array
  readonly weights: Float64Array
  /** Weights and capacity in whole steps, for filling it exactly; null where so many fit that it is as good by shares. */
  readonly steps: { readonly weights: Int32Array; readonly capacity: number } | null
}

/** More usual items than this in a resource, and what a last part of one loses no longer matters. */
const MOST_ITEMS = 24
const MOST_STEPS = 1024

/**
 * Resources of which no choice uses two, where a price says least: a few large items have to fit. The dearer an item of a
 * resource is at these prices, beside the other resources its choices use, the sooner it is chosen.
 */
export function chooseKnapsacks(problem: AssignmentProblem, prices: Float64Array): readonly Knapsack[] {
  const users = usersOf(problem)
  const worth = users.map(({ weights }, resource) => (prices[resource] ?? 0) * mean(weights))
  const clashes = clashesOf(problem)
  const rival = clashes.map((others, resource) =>
    [...others].reduce((sum, other) => sum + (worth[other] ?? 0), worth[resource] ?? 0),
  )
  const order = worth
    .map((_, resource) => resource)
    .filter((resource) => (users[resource]?.choices.length ?? 0) > 0)
    .toSorted((one, other) => share(other) - share(one) || items(one) - items(other) || one - other)
  function share(resource: number): number {
    return (worth[resource] ?? 0) / ((rival[resource] ?? 0) || 1)
  }
  function items(resource: number): number {
    return (problem.capacities[resource] ?? 0) / mean(users[resource]?.weights ?? [])
  }
  const taken = new Set<number>()
  for (const resource of order) if (![...(clashes[resource] ?? [])].some((other) => taken.has(other))) taken.add(resource)
  return [...taken].map((resource) => knapsackOf(resource, problem.capacities[resource] ?? 0, users[resource] ?? NO_USERS))
}

interface Users {
  readonly choices: number[]
  readonly weights: number[]
}
const NO_USERS: Users = { choices: [], weights: [] }

function usersOf({ cost, firstUse, resource, amount, capacities }: AssignmentProblem): readonly Users[] {
  const users: Users[] = Array.from(capacities, () => ({ choices: [], weights: [] }))
  for (let choice = 0; choice < cost.length; choice += 1) {
    for (let use = firstUse[choice] as number; use < (firstUse[choice + 1] as number); use += 1) {
      const own = users[resource[use] as number] as Users
      own.choices.push(choice)
      own.weights.push(amount[use] as number)
    }
  }
  return users
}

/** By resource, the others that some choice uses together with it. */
function clashesOf({ cost, firstUse, resource, capacities }: AssignmentProblem): readonly Set<number>[] {
  const clashes = Array.from(capacities, () => new Set<number>())
  for (let choice = 0; choice < cost.length; choice += 1) {
    const used = resource.subarray(firstUse[choice], firstUse[choice + 1])
    for (const one of used) for (const other of used) if (other !== one) clashes[one]?.add(other)
  }
  return clashes
}

function knapsackOf(resource: number, capacity: number, { choices, weights }: Users): Knapsack {
  return {
    resource,
    capacity,
    choices: Int32Array.from(choices),
    weights: Float64Array.from(weights),
    steps: stepsOf(capacity, weights),
  }
}

/** Weights are rounded down, so that what fits by weight fits by steps too. */
function stepsOf(capacity: number, weights: readonly number[]): Knapsack['steps'] {
  if (capacity > MOST_ITEMS * mean(weights)) return null
  if (!(capacity > 0)) return { weights: Int32Array.from(weights, () => 1), capacity: 0 }
  const exact = commonStep(weights)
  const step = exact !== null && capacity / exact <= MOST_STEPS ? exact : capacity / MOST_STEPS
  return { weights: Int32Array.from(weights, (weight) => stepsIn(weight, step)), capacity: stepsIn(capacity, step) }
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length
}
