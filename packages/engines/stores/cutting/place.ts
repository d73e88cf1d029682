import { leastWaste } from './bound.ts'
import { isSmall, placeExactly } from './exact.ts'
import { bestFit, fill, type FillOrder } from './fill.ts'
import { improve } from './improve.ts'
import type { Job, Placing } from './job.ts'
import { recut } from './recut.ts'
import { compareScores, type Score, scoreOf } from './score.ts'

/** Lengths one wasted is weighed against: use all of a reel; lean to ends that go back; waste nothing if it can be helped. */
const WASTE_WORTHS = [0, 2, 1_000]
/** Placings that are improved, of all that were made. */
const IMPROVED = 3

/** The best placing found, and whether it is proved that there is none better. */
export function place(job: Job): { readonly placing: Placing; readonly isProved: boolean } {
  if (isSmall(job)) return { placing: placeExactly(job), isProved: true }
  return { placing: search(job), isProved: false }
}

/**
 * The best of some ways to fill reel after reel and of best fit, improved two reels at a time.
 *
 * @source SRC-773 best fit and fill, dealt anew (docs/sources.md)
 * @example search({ cords: [{ length: 50, batch: 'a', rank: 0 }], taken: [0], items: [{ size: 30 }, { size: 20 }], rules: { cut: 0, keep: 10 } }) // → [0, 0]
 */
export function search(job: Job): Placing {
  const cutAlready = job.taken.filter((taken) => taken > 0).map((size) => ({ size }))
  const bound = leastWaste(job.cords, [...job.items, ...cutAlready], job.rules)
  const isLeast = ({ score }: Scored) => score.left === 0 && score.waste <= bound
  const filled: Scored[] = []
  for (const order of ordersOf(job)) {
    filled.push(scored(job, fill(job, order)))
    if (filled.some(isLeast)) break
  }
  filled.push(scored(job, bestFit(job)))
  const improved = filled
    .toSorted(byScore)
    .slice(0, filled.some(isLeast) ? 1 : IMPROVED)
    .map(({ placing }) => scored(job, improve(job, placing)))
  const best = improved.toSorted(byScore)[0]?.placing ?? job.items.map(() => -1)
  return recut(job, best, bound)
}

interface Scored {
  readonly placing: Placing
  readonly score: Score
}
const scored = (job: Job, placing: Placing): Scored => ({ placing, score: scoreOf(job, placing) })
const byScore = (one: Scored, other: Scored) => compareScores(one.score, other.score)

function ordersOf({ cords }: Job): FillOrder[] {
  const reels = [...cords.entries()]
  const lines = [
    reels.toSorted(([, one], [, other]) => one.rank - other.rank || one.length - other.length),
    reels.toSorted(([, one], [, other]) => one.length - other.length || one.rank - other.rank),
    reels.toSorted(([, one], [, other]) => other.length - one.length || one.rank - other.rank),
  ].map((line) => line.map(([reel]) => reel))
  return lines.flatMap((line) => WASTE_WORTHS.map((wasteWorth) => ({ reels: line, wasteWorth })))
}
