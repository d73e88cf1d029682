import { type Outcome, refuse } from '../outcome.ts'
import { type SeededChance, seededChance } from './seeded-chance.ts'
import { type DistanceTable, distanceTable, improveTour, lengthOf } from './tour-improvement.ts'
import { exchangeOuter, type Tour, tourOf } from './tour-moves.ts'

export interface TourSettings {
  /** Any whole number. The same seed gives the same tour. */
  readonly seed: number
  /** How often the tour is shaken and improved again: 2,000 is good for some hundred nodes. */
  readonly iterations: number
}

export interface ShortestTour {
  /** Every node once; the way back from the last to the first is part of the tour. */
  readonly order: readonly number[]
  readonly length: number
}

export const MOST_NODES = 2_001
const MOST_ITERATIONS = 1_000_000
const FARTHEST = 1e12
const WINDOW = 50

/**
 * A short round trip through nodes 0 to count - 1, not surely the shortest: within 1 % of it for some hundred nodes.
 *
 * Starts from the better of two tours, each improved: always on to the nearest node left, and the nodes as numbered.
 * Then shakes it within a window of fifty nodes by a double bridge, improves it there, and keeps what is shorter.
 * Never longer than the nodes as numbered, but for binary dust.
 *
 * @source SRC-750 2-opt and Or-opt · SRC-751 double bridge (docs/sources.md)
 * @param distance of two nodes, the same both ways: only asked with the lower number first; 0 to 1e12
 * @returns the tour, or `walk/too-many`, `walk/setting` or `walk/distance`
 * @example shortestTour(4, (from, to) => Math.min(to - from, 4 - (to - from)), { seed: 1, iterations: 10 }).length // → 4
 */
export function shortestTour(
  count: number,
  distance: (from: number, to: number) => number,
  { seed, iterations }: TourSettings,
): Outcome<ShortestTour> {
  if (!(Number.isInteger(count) && count >= 0 && count <= MOST_NODES))
    return refuse('walk/too-many', 'count', `a tour has 0 to ${MOST_NODES} nodes, not ${count}`)
  if (!Number.isSafeInteger(seed)) return refuse('walk/setting', 'seed', `the seed must be a whole number, not ${seed}`)
  if (!(Number.isInteger(iterations) && iterations >= 0 && iterations <= MOST_ITERATIONS))
    return refuse('walk/setting', 'iterations', `iterations must be a whole number from 0, not ${iterations}`)

  const distances = new Float64Array(count * count)
  for (let from = 0; from < count; from++) {
    for (let to = from + 1; to < count; to++) {
      const between = distance(from, to)
      if (!(between >= 0 && between <= FARTHEST))
        return refuse('walk/distance', 'distance', `from ${from} to ${to} cannot be ${between}`)
      distances[from * count + to] = between
      distances[to * count + from] = between
    }
  }
  const table = distanceTable(count, distances)
  const tour = count > 3 ? shaken(bestStart(table), table, { chance: seededChance(seed), iterations }) : tourOf(asNumbered(count))
  return { ok: true, order: [...tour.order], length: lengthOf(tour, table) }
}

function asNumbered(count: number): number[] {
  return Array.from({ length: count }, (_, node) => node)
}

function bestStart(table: DistanceTable): Tour {
  const nodes = asNumbered(table.count)
  const [nearest, numbered] = [tourOf(alwaysToTheNearest(table)), tourOf(nodes)] as const
  for (const tour of [nearest, numbered]) improveTour(tour, table, nodes)
  return lengthOf(nearest, table) < lengthOf(numbered, table) ? nearest : numbered
}

function alwaysToTheNearest({ count, distances }: DistanceTable): number[] {
  const left = new Set(asNumbered(count))
  const order: number[] = []
  for (let next = 0; order.length < count;) {
    order.push(next)
    left.delete(next)
    const from = next * count
    let least = Infinity
    for (const node of left) {
      if (!(distances[from + node]! < least)) continue
      least = distances[from + node]!
      next = node
    }
  }
  return order
}

function shaken(tour: Tour, table: DistanceTable, { chance, iterations }: { chance: SeededChance; iterations: number }): Tour {
  const { count, leastGain } = table
  // Three stretches fill the window at most, and leave one node at least outside.
  const longest = Math.floor(Math.min(WINDOW, count - 1) / 3)
  const kept = tourOf([...tour.order])
  let length = lengthOf(tour, table)
  for (let iteration = 0; iteration < iterations; iteration++) {
    const stretch = () => 1 + chance.below(longest)
    improveTour(tour, table, exchangeOuter(tour, chance.below(count), [stretch(), stretch(), stretch()]))
    const found = lengthOf(tour, table)
    const [better, worse] = found < length - leastGain ? [tour, kept] : [kept, tour]
    if (better === tour) length = found
    worse.order.set(better.order)
    worse.place.set(better.place)
  }
  return kept
}
