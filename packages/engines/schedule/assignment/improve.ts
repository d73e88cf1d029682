import { costOfNone, NONE, type Places } from './places.ts'
import type { AssignmentProblem } from './problem.ts'

/** Choices looked at, at most, for each item there is: what is left to win after that is for a solver. */
const WORK_OF_ITEM = 20_000
const LEAST_GAIN = 1e-9

/** Moves items to cheaper choices while that gains: alone, or with another that makes room. */
export class Improvement {
  readonly #places: Places
  readonly #none: number
  readonly #sorted: Int32Array
  /** By resource, the items that use it. */
  readonly #users: readonly Set<number>[]
  #work = 0

  /** @param sorted all choices, as `choicesByCost` gives them */
  constructor(places: Places, sorted: Int32Array) {
    const { problem, taken } = places
    this.#places = places
    this.#none = costOfNone(problem)
    this.#sorted = sorted
    this.#users = Array.from(problem.capacities, () => new Set())
    for (const [item, choice] of taken.entries()) this.#note(item, choice, true)
  }

  /** Moves items alone, until none gains. */
  shift(): void {
    for (let gains = true; gains;) {
      gains = false
      for (let item = 0; item < this.#places.taken.length; item += 1) if (this.#shiftOne(item)) gains = true
    }
  }

  /** Moves items alone and in twos, until none gains or that has been enough. */
  shiftAndDisplace(isOver: () => boolean): void {
    const items = this.#places.taken.length
    const mostWork = items * WORK_OF_ITEM
    for (let gains = true; gains;) {
      gains = false
      for (let item = 0; item < items; item += 1) {
        if (this.#work > mostWork || isOver()) return
        if (this.#shiftOne(item) || this.#displaceOne(item)) gains = true
      }
    }
  }

  /** To the cheapest choice that fits beside all others. */
  #shiftOne(item: number): boolean {
    const places = this.#places
    const now = places.taken[item] as number
    places.take(item, NONE)
    const found = this.#cheapestThatFits(item, now, this.#costOf(now))
    places.take(item, found)
    if (found === now) return false
    this.#move(item, now, found)
    return true
  }

  /** The cheapest choice below this cost that fits, other than the one an item comes from: that, where there is none. */
  #cheapestThatFits(item: number, from: number, below: number): number {
    const places = this.#places
    const { firstChoice, cost } = places.problem
    const end = firstChoice[item + 1] as number
    for (let at = firstChoice[item] as number; at < end; at += 1) {
      const choice = this.#sorted[at] as number
      if (!((cost[choice] as number) < below - LEAST_GAIN)) break
      this.#work += 1
      if (choice !== from && places.fits(choice)) return choice
    }
    return from
  }

  /** To a cheaper choice in which another item makes room by going elsewhere, if both together win. */
  #displaceOne(item: number): boolean {
    const places = this.#places
    const { firstChoice, cost } = places.problem
    const now = places.taken[item] as number
    const before = this.#costOf(now)
    for (let at = firstChoice[item] as number; at < (firstChoice[item + 1] as number); at += 1) {
      const wanted = this.#sorted[at] as number
      const gain = before - (cost[wanted] as number)
      if (!(gain > LEAST_GAIN)) return false
      places.take(item, wanted)
      if (this.#makeRoom(item, wanted, gain)) {
        this.#move(item, now, wanted)
        return true
      }
      places.take(item, now)
    }
    return false
  }

  /** One user of what is short now goes elsewhere for less than the gain, so that nothing is short any more. */
  #makeRoom(item: number, wanted: number, gain: number): boolean {
    const places = this.#places
    const short = this.#shortest(wanted)
    if (short === NONE) return false
    const lack = -(places.room[short] as number)
    for (const other of this.#users[short] as Set<number>) {
      this.#work += 1
      const now = places.taken[other] as number
      if (other === item || amountOf(places, now, short) < lack) continue
      places.take(other, NONE)
      const found = this.#shortest(wanted) === NONE ? this.#cheapestThatFits(other, now, this.#costOf(now) + gain) : now
      places.take(other, found)
      if (found === now) continue
      this.#move(other, now, found)
      return true
    }
    return false
  }

  /** What a choice that is taken uses too much of, the most for what there is; NONE where it fits. */
  #shortest(choice: number): number {
    const { firstUse, resource, capacities } = this.#places.problem
    let short = NONE
    let least = 0
    for (let use = firstUse[choice] as number; use < (firstUse[choice + 1] as number); use += 1) {
      const which = resource[use] as number
      const room = (this.#places.room[which] as number) / ((capacities[which] as number) || 1)
      if (room >= least) continue
      least = room
      short = which
    }
    return short
  }

  #costOf(choice: number): number {
    return choice === NONE ? this.#none : (this.#places.problem.cost[choice] as number)
  }

  /** Notes among the users of resources that an item takes another choice. */
  #move(item: number, from: number, to: number): void {
    this.#note(item, from, false)
    this.#note(item, to, true)
  }

  #note(item: number, choice: number, isUser: boolean): void {
    if (choice === NONE) return
    const { firstUse, resource } = this.#places.problem
    for (let use = firstUse[choice] as number; use < (firstUse[choice + 1] as number); use += 1) {
      const users = this.#users[resource[use] as number]
      if (isUser) users?.add(item)
      else users?.delete(item)
    }
  }
}

/** All choices, item by item, the cheapest first. */
export function choicesByCost({ names, firstChoice, cost }: AssignmentProblem): Int32Array {
  const sorted = Int32Array.from(cost, (_, choice) => choice)
  const cheaper = (one: number, other: number) => (cost[one] as number) - (cost[other] as number) || one - other
  for (let item = 0; item < names.length; item += 1) sorted.subarray(firstChoice[item], firstChoice[item + 1]).sort(cheaper)
  return sorted
}

function amountOf({ problem: { firstUse, resource, amount } }: Places, choice: number, which: number): number {
  for (let use = firstUse[choice] as number; use < (firstUse[choice + 1] as number); use += 1)
    if (resource[use] === which) return amount[use] as number
  return 0
}
