import type { AssignmentProblem } from './problem.ts'
import { commonStep, stepsIn } from './whole-steps.ts'

/** More steps than this in a capacity, and nearly all of it can be reached anyway. */
const MOST_STEPS = 4096

/**
 * The same problem with each capacity brought down to what sums of the amounts can reach: of 12 hours, works of 5, 8 and
 * 11 hours fill 11 at most. Nothing that fits is lost, and bounds become closer.
 */
export function withReachableCapacities(problem: AssignmentProblem): AssignmentProblem {
  const amounts = Array.from(problem.capacities, () => new Set<number>())
  for (const [use, amount] of problem.amount.entries()) amounts[problem.resource[use] as number]?.add(amount)
  const capacities = problem.capacities.map((capacity, resource) => reachable(capacity, amounts[resource] ?? new Set()))
  return { ...problem, capacities }
}

function reachable(capacity: number, amounts: ReadonlySet<number>): number {
  const step = commonStep(amounts)
  if (step === null || amounts.size === 0) return capacity
  const steps = stepsIn(capacity, step)
  if (steps > MOST_STEPS) return capacity
  const isSum = new Uint8Array(steps + 1)
  isSum[0] = 1
  // Each amount as often as one likes: more than there is of it may be reached, but never less.
  for (const amount of amounts) {
    const size = Math.round(amount / step)
    for (let sum = size; sum <= steps; sum += 1) if (isSum[sum - size]) isSum[sum] = 1
  }
  return isSum.lastIndexOf(1) * step
}
