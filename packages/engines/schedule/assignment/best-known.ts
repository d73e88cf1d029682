import { costOfNone, Places } from './places.ts'
import type { AssignmentProblem } from './problem.ts'

/** The best assignment found so far: first the one with fewest items left without, then the cheapest. */
export class BestKnown {
  #places: Places
  #value = Infinity
  readonly #none: number

  constructor(problem: AssignmentProblem) {
    this.#places = new Places(problem)
    this.#none = costOfNone(problem)
  }

  get places(): Places {
    return this.#places
  }

  /** Infinity while items are left without a choice. */
  get cost(): number {
    return this.#places.missing > 0 ? Infinity : this.#value
  }

  /** Keeps it, if it is better. */
  offer(places: Places): void {
    const value = places.cost + this.#none * places.missing
    if (!(value < this.#value)) return
    this.#places = places
    this.#value = value
  }

  /** One of its own to change. */
  copy(): Places {
    const copy = new Places(this.#places.problem)
    copy.takeAll(this.#places.taken)
    return copy
  }

  /** Whether a bound leaves no more than this share of the cost to win. */
  isNear(bound: number, relativeGap: number): boolean {
    return this.cost - bound <= relativeGap * Math.abs(this.cost)
  }
}
