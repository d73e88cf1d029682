import type { AssignmentProblem } from './problem.ts'

/** No choice is taken. */
export const NONE = -1
/** Share of a capacity that sums may be off by. */
const ROUNDING = 1e-9

/** What each item takes, and what is left of each resource. */
export class Places {
  readonly problem: AssignmentProblem
  /** By item the choice it takes, or NONE. */
  readonly taken: Int32Array
  readonly room: Float64Array

  constructor(problem: AssignmentProblem) {
    this.problem = problem
    this.taken = new Int32Array(problem.names.length).fill(NONE)
    // What sums may be off by is room too, or a choice would not fit again where it was taken from.
    this.room = problem.capacities.map((capacity) => capacity + ROUNDING * Math.max(1, capacity))
  }

  fits(choice: number): boolean {
    const { firstUse, resource, amount } = this.problem
    const end = firstUse[choice + 1] as number
    for (let use = firstUse[choice] as number; use < end; use += 1)
      if ((this.room[resource[use] as number] as number) < (amount[use] as number)) return false
    return true
  }

  /** Takes another choice, or none, whether it fits or not. */
  take(item: number, choice: number): void {
    this.#use(this.taken[item] as number, -1)
    this.taken[item] = choice
    this.#use(choice, 1)
  }

  takeAll(taken: ArrayLike<number>): void {
    for (let item = 0; item < this.taken.length; item += 1) this.take(item, taken[item] ?? NONE)
  }

  /** Whether no more of a resource is used than there is, but for a share that a solver may be off by. */
  holds(tolerance: number): boolean {
    const { capacities } = this.problem
    return this.room.every((room, resource) => room >= -tolerance * Math.max(1, capacities[resource] as number))
  }

  get cost(): number {
    const { cost } = this.problem
    return this.taken.reduce((sum, choice) => (choice === NONE ? sum : sum + (cost[choice] as number)), 0)
  }

  get missing(): number {
    return this.taken.reduce((count, choice) => (choice === NONE ? count + 1 : count), 0)
  }

  #use(choice: number, sign: number): void {
    if (choice === NONE) return
    const { firstUse, resource, amount } = this.problem
    const end = firstUse[choice + 1] as number
    for (let use = firstUse[choice] as number; use < end; use += 1) {
      const which = resource[use] as number
      this.room[which] = (this.room[which] as number) - sign * (amount[use] as number)
    }
  }
}

/** What an item without a choice counts as: more than all others could save together, so that none is left without for that. */
export function costOfNone({ names, firstChoice, cost }: AssignmentProblem): number {
  let spread = 1
  for (let item = 0; item < names.length; item += 1) {
    let least = Infinity
    let most = -Infinity
    for (let choice = firstChoice[item] as number; choice < (firstChoice[item + 1] as number); choice += 1) {
      least = Math.min(least, cost[choice] as number)
      most = Math.max(most, Math.abs(cost[choice] as number))
    }
    spread += most - Math.min(least, 0) + most
  }
  return spread
}
