import { moveStretch, nodeBeside, reverseStretch, type Tour } from './tour-moves.ts'

/** Distances of every two nodes, row by row, with the nodes nearest to each. */
export interface DistanceTable {
  readonly count: number
  readonly distances: Float64Array
  readonly near: readonly Int32Array[]
  /** A gain must be larger than this, or binary dust would go round in circles. */
  readonly leastGain: number
}

const NEAR = 10
const LONGEST_STRETCH = 3
const DIRECTIONS = [1, -1] as const

/** @param distances count × count, row by row, symmetric, finite, not below 0 */
export function distanceTable(count: number, distances: Float64Array): DistanceTable {
  const longest = distances.reduce((most, distance) => Math.max(most, distance), 0)
  const near = Array.from({ length: count }, (_, node) => {
    const row = distances.subarray(node * count, (node + 1) * count)
    const others = Array.from({ length: count }, (__, other) => other).filter((other) => other !== node)
    return Int32Array.from(others.toSorted((one, other) => row[one]! - row[other]!).slice(0, NEAR))
  })
  return { count, distances, near, leastGain: 1e-10 * longest }
}

/** @returns metres, or whatever the table is in: the way round and back to the first */
export function lengthOf({ order }: Tour, { count, distances }: DistanceTable): number {
  let length = 0
  for (let position = 0; position < count; position++) {
    length += distances[order[position]! * count + order[position + 1 === count ? 0 : position + 1]!]!
  }
  return length
}

/**
 * Shortens a tour in place until neither of two changes at any of these nodes shortens it further.
 *
 *     2-opt    two legs replaced by two others: the stretch between them is turned round
 *     Or-opt   up to three neighbouring nodes put in elsewhere, as they are or turned round
 *
 * New legs lead to one of the ten nearest nodes. A node is looked at again only when a leg at it has changed.
 *
 * @source SRC-750 2-opt and Or-opt (docs/sources.md)
 */
export function improveTour(tour: Tour, table: DistanceTable, nodes: readonly number[]): void {
  const waiting = [...nodes]
  const isWaiting = new Uint8Array(table.count)
  for (const node of waiting) isWaiting[node] = 1
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    isWaiting[node] = 0
    for (let ends = shorten(tour, table, node); ends !== null; ends = shorten(tour, table, node)) {
      for (const end of ends) {
        if (isWaiting[end] === 1) continue
        isWaiting[end] = 1
        waiting.push(end)
      }
    }
  }
}

/** Makes the first change found at the node that shortens the tour: the ends of its legs, or null when there is none. */
function shorten(tour: Tour, table: DistanceTable, node: number): readonly number[] | null {
  return turnStretchAt(tour, table, node) ?? moveStretchAt(tour, table, node)
}

function turnStretchAt(tour: Tour, { count, distances, near, leastGain }: DistanceTable, node: number): number[] | null {
  for (const direction of DIRECTIONS) {
    const next = nodeBeside(tour, node, direction)
    const leg = distances[node * count + next]!
    for (const other of near[node]!) {
      const newLeg = distances[node * count + other]!
      if (!(newLeg < leg)) break
      const otherNext = nodeBeside(tour, other, direction)
      const gain = leg + distances[other * count + otherNext]! - newLeg - distances[next * count + otherNext]!
      if (!(gain > leastGain)) continue
      if (direction === 1) reverseStretch(tour, tour.place[next]!, tour.place[other]!)
      else reverseStretch(tour, tour.place[node]!, tour.place[otherNext]!)
      return [node, next, other, otherNext]
    }
  }
  return null
}

function moveStretchAt(tour: Tour, table: DistanceTable, node: number): number[] | null {
  // A stretch needs two nodes outside it to stand between, and a third for another place.
  for (let length = 1; length <= Math.min(LONGEST_STRETCH, table.count - 3); length++) {
    for (const direction of DIRECTIONS) {
      const ends = putElsewhere(tour, table, { node, length, direction })
      if (ends !== null) return ends
    }
  }
  return null
}

/** The stretch that begins at the node and leads in the direction, put in with the node next to one of its near nodes. */
function putElsewhere(
  tour: Tour,
  { count, distances, near, leastGain }: DistanceTable,
  { node, length, direction }: { readonly node: number; readonly length: number; readonly direction: 1 | -1 },
): number[] | null {
  const last = nodeBeside(tour, node, direction * (length - 1))
  const before = nodeBeside(tour, node, -direction)
  const after = nodeBeside(tour, node, direction * length)
  const isInside = (other: number) => {
    const steps = (tour.place[other]! - tour.place[node]!) * direction
    return (steps < 0 ? steps + count : steps) < length
  }
  const saved = distances[before * count + node]! + distances[last * count + after]! - distances[before * count + after]!
  for (const other of near[node]!) {
    const newLeg = distances[node * count + other]!
    if (!(newLeg < saved)) break
    if (isInside(other)) continue
    for (const side of DIRECTIONS) {
      const beyond = nodeBeside(tour, other, side)
      if (isInside(beyond)) continue
      const gain = saved - newLeg - distances[last * count + beyond]! + distances[other * count + beyond]!
      if (!(gain > leastGain)) continue
      const from = tour.place[direction === 1 ? node : last]!
      moveStretch(tour, { from, length }, tour.place[side === 1 ? other : beyond]!, direction !== side)
      return [node, last, before, after, other, beyond]
    }
  }
  return null
}
