import { type Cord, type Job, type Placing, roomOf, type Rules } from './job.ts'
import { compareCosts, compareSum, type Cost, costAt, nothing, sumOf } from './score.ts'
import { sumsOfSets } from './sums.ts'

/** Sets of items within sets of items, times reels: more of them take too long to wait for. */
const MOST_STEPS = 6_000_000

/** Whether all ways to place the items can be looked at. */
export function isSmall({ items, cords }: Pick<Job, 'items' | 'cords'>): boolean {
  return 3 ** items.length * cords.length <= MOST_STEPS
}

/** For each set of items the best way to cut it from the reels so far, null where there is none, and what the last of them takes. */
interface Table {
  readonly costs: (Cost | null)[]
  readonly onLast: Uint32Array
}

/**
 * The best placing of a few items, by dynamic programming over the sets of items cut from the first 1, 2, 3 … reels.
 * A set is a whole number: item 0 is its lowest bit.
 *
 * @source SRC-771 sets of items, reel by reel (docs/sources.md)
 * @example placeExactly({ cords: [{ length: 50, batch: 'a', rank: 0 }], taken: [0], items: [{ size: 30 }, { size: 20 }], rules: { cut: 0, keep: 10 } }) // → [0, 0]
 */
export function placeExactly({ items, cords, taken, rules }: Job): Placing {
  const sums = sumsOfSets(items.map(({ size }) => size))
  let costs: readonly (Cost | null)[] = sums.map((_, set) => (set === 0 ? nothing : null))
  const tables: Table[] = []
  for (const [reel, cord] of cords.entries()) {
    const table = withReel(costs, sums, cord, taken[reel] ?? 0, rules)
    tables.push(table)
    costs = table.costs
  }

  let set = bestSet(costs, sums)
  const placing = items.map(() => -1)
  for (const [reel, { onLast }] of [...tables.entries()].toReversed()) {
    const here = onLast[set] ?? 0
    for (const item of items.keys()) if (here & (1 << item)) placing[item] = reel
    set ^= here
  }
  return placing
}

/** One reel more: each set it can take, beside each set cut from the reels before. */
function withReel(before: readonly (Cost | null)[], sums: readonly number[], cord: Cord, already: number, rules: Rules): Table {
  const costs: (Cost | null)[] = sums.map(() => null)
  const onLast = new Uint32Array(sums.length)
  const room = roomOf(cord, rules) - already
  for (const [here, sum] of sums.entries()) {
    if (sum > room) continue
    const load = already + sum
    const own = costAt(cord, load, rules)
    const others = sums.length - 1 - here
    for (let rest = others; rest >= 0; rest = rest === 0 ? -1 : (rest - 1) & others) {
      const prior = before[rest]
      if (!prior) continue
      const best = costs[here | rest]
      if (best && compareSum(prior, own, best) >= 0) continue
      costs[here | rest] = sumOf(prior, own)
      onLast[here | rest] = here
    }
  }
  return { costs, onLast }
}

/** The set that leaves least, and of those the one that costs least. */
function bestSet(costs: readonly (Cost | null)[], sums: readonly number[]): number {
  let best = 0
  for (const [set, cost] of costs.entries()) {
    const [sum = 0, most = 0, least] = [sums[set], sums[best], costs[best]]
    if (cost && least && (sum > most || (sum === most && compareCosts(cost, least) < 0))) best = set
  }
  return best
}
