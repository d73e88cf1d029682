import type { BestKnown } from './best-known.ts'
import { Improvement } from './improve.ts'
import { choicesWithin, itemsOf, leastLosing, modelOf } from './kernel.ts'
import type { SolveMilp } from './milp.ts'
import { NONE, type Places } from './places.ts'
import type { ProvenBound } from './price-bound.ts'

/** Up to so many choices that can matter, the solver is given all of them, and comes to an end with them. */
const MOST_AT_ONCE = 2500
/** Items of a kernel and choices of each, so many that a solver comes to an end with them in a few seconds. */
const ITEMS_OF_KERNEL = 400
const CHOICES_OF_ITEM = 4.4
/** What a solver may be off by, as a share of a capacity. */
const TOLERANCE = 1e-6

interface Further {
  readonly solve: SolveMilp
  readonly seconds: number
  readonly relativeGap: number
  /** All choices, as `choicesByCost` gives them. */
  readonly sorted: Int32Array
  readonly isOver: (share: number) => boolean
}

/**
 * Lets a solver choose anew: in a small problem among all choices that can matter, which proves a bound too; in a larger
 * one kernel by kernel among those that lose least. What it says of a kernel is no bound of the whole.
 *
 * @returns a bound of the whole problem; -Infinity where the solver proved none
 */
export function solveFurther(best: BestKnown, bounds: readonly ProvenBound[], further: Further): number {
  const [first, second = first] = bounds
  const closest = first && second && second.bound > first.bound ? second : first
  if (!closest || best.isNear(closest.bound, further.relativeGap)) return -Infinity
  const all = choicesThatMatter(best, bounds)
  if (all.length <= MOST_AT_ONCE) return solveOver(best, all, further.seconds, further)
  solveKernels(best, closest, further)
  return -Infinity
}

/** Choices that no bound rules out of a cheaper assignment. */
function choicesThatMatter(best: BestKnown, bounds: readonly ProvenBound[]): Int32Array {
  const all = Int32Array.from(best.places.problem.cost.keys())
  return bounds.reduce<Int32Array>((kept, { losses, bound }) => choicesWithin(kept, losses, bound, best.cost), all)
}

function solveKernels(best: BestKnown, { bound, losses }: ProvenBound, further: Further): void {
  const kernels = itemsOfKernels(best.places, losses)
  for (const [index, items] of kernels.entries()) {
    if (further.isOver(index / kernels.length) || best.isNear(bound, further.relativeGap)) return
    const count = Math.round(items.length * CHOICES_OF_ITEM)
    solveOver(best, leastLosing(best.places, losses, items, count), further.seconds / kernels.length, further)
  }
}

/** Items that want the same resources in one kernel, as many in each. */
function itemsOfKernels(places: Places, losses: Float64Array): readonly (readonly number[])[] {
  const { names, firstUse, resource } = places.problem
  const count = Math.ceil(names.length / ITEMS_OF_KERNEL)
  const wanted = names.map((_, item) => {
    const choice = wantedBy(places, losses, item)
    return firstUse[choice] === firstUse[choice + 1] ? Infinity : (resource[firstUse[choice] as number] as number)
  })
  const sorted = [...names.keys()].toSorted((one, other) => compare(wanted[one], wanted[other]) || one - other)
  const cut = (kernel: number) => Math.round((kernel * sorted.length) / count)
  // In their own order again, as their choices stand.
  return Array.from({ length: count }, (_, kernel) =>
    sorted.slice(cut(kernel), cut(kernel + 1)).toSorted((one, other) => one - other),
  )
}

function compare(one = Infinity, other = Infinity): number {
  return one === other ? 0 : one - other
}

/** What an item takes, or while that uses nothing, what it would lose least with. */
function wantedBy({ problem, taken }: Places, losses: Float64Array, item: number): number {
  const { firstChoice, firstUse } = problem
  const now = taken[item] as number
  if (now !== NONE && firstUse[now] !== firstUse[now + 1]) return now
  let best = now
  for (let choice = firstChoice[item] as number; choice < (firstChoice[item + 1] as number); choice += 1) {
    if (firstUse[choice] === firstUse[choice + 1]) continue
    if (best === now || (losses[choice] as number) < (losses[best] as number)) best = choice
  }
  return best === NONE ? (firstChoice[item] as number) : best
}

/** @returns what an assignment of these choices costs at least with all other items as they are, or one that is known, if that is less */
function solveOver(best: BestKnown, kept: Int32Array, seconds: number, { solve, relativeGap, sorted }: Further): number {
  const places = best.copy()
  const { problem } = places
  const items = itemsOf(problem, kept)
  const now = new Set(items.map((item) => places.taken[item] as number))
  const start = now.has(NONE) ? null : Float64Array.from(kept, (choice) => (now.has(choice) ? 1 : 0))
  for (const item of items) places.take(item, NONE)
  const answer = solve(modelOf(problem, kept, places.room), { seconds, relativeGap, start })
  if (!answer) return -Infinity
  for (const [column, choice] of kept.entries())
    if ((answer.values[column] as number) > 0.5) places.take(items[column] as number, choice)
  if (places.holds(TOLERANCE)) {
    new Improvement(places, sorted).shift()
    best.offer(places)
  }
  return Math.min(answer.bound, best.cost)
}
