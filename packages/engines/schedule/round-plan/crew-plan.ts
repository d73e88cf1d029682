import { anneal } from './anneal.ts'
import type { Beat } from './beats.ts'
import type { PlanRules } from './input.ts'
import { CrewSearch } from './search.ts'

/** Work for one crew, in windows and weeks filled: about two seconds for the largest plant on one core. */
const MOST_WORK = 100_000_000
/** Of it, the most and the least for stirring a settled plan: a third of a second, and a tenth, on an idle core. */
const MOST_ANNEALING = 15_000_000
const LEAST_ANNEALING = 4_000_000
/** And no more than this for each window and week of each beat: a small plan is found soon. */
const ANNEALING_OF_PART = 30_000

export interface SearchWatch {
  /** Share of the search that is done, 0 to 1. */
  readonly onProgress?: (share: number) => void
  /** Asked now and then: the search ends with what it has. */
  readonly shouldStop?: () => boolean
}

/**
 * Chooses the open weeks of all beats of one crew: the largest first, each improved against all others until none gains,
 * then stirred and settled once more, since a settled plan is often one that no single change makes better.
 */
export function searchCrewPlan(
  beats: readonly Beat[],
  hours: readonly number[],
  rules: PlanRules,
  seed: number,
  watch: SearchWatch,
): CrewSearch {
  const search = new CrewSearch(beats, rules, hours)
  const largestFirst = beats.map((_, index) => index).toSorted((one, other) => hoursOf(beats, other) - hoursOf(beats, one))
  const isOver = () => search.work > MOST_WORK || watch.shouldStop?.() === true
  for (const index of largestFirst) search.begin(index)
  settle(search, largestFirst, isOver, (share) => watch.onProgress?.(share * 0.3))
  const settled = search.keep()
  const settledCost = search.cost
  const parts = beats.reduce((sum, { classes }) => sum + classes.length + hours.length, 0)
  // A large plant has spent much on settling already, and gains less by stirring: each piece of it counts twice.
  const stirring = Math.max(LEAST_ANNEALING, MOST_ANNEALING - 2 * search.work)
  anneal(search, beats, seed, Math.min(stirring, ANNEALING_OF_PART * parts), isOver, (share) =>
    watch.onProgress?.(0.3 + share * 0.6),
  )
  settle(search, largestFirst, isOver, (share) => watch.onProgress?.(0.9 + share * 0.1))
  if (search.cost > settledCost) search.restore(settled)
  watch.onProgress?.(1)
  return search
}

function hoursOf(beats: readonly Beat[], index: number): number {
  return beats[index]?.hours ?? 0
}

/** Improves beat after beat until a whole sweep gains nothing. */
function settle(search: CrewSearch, order: readonly number[], isOver: () => boolean, onProgress: (share: number) => void): void {
  for (let sweep = 1, gains = true; gains; sweep += 1) {
    gains = false
    for (const index of order) {
      if (isOver()) return
      if (search.improve(index)) gains = true
    }
    onProgress(1 - 0.5 ** sweep)
  }
}
