/** A round trip: the node at each position, and the position of each node. The moves below change both in place. */
export interface Tour {
  readonly order: Int32Array
  readonly place: Int32Array
}

/** A stretch of a tour, from a position onwards. */
export interface Stretch {
  readonly from: number
  readonly length: number
}

/** @example tourOf([2, 0, 1]).place.join(' ') // → '1 2 0' */
export function tourOf(order: readonly number[]): Tour {
  const tour = { order: Int32Array.from(order), place: new Int32Array(order.length) }
  order.forEach((node, position) => (tour.place[node] = position))
  return tour
}

/** A position that has run past an end of the tour by at most one round, brought back into it. */
export function wrapped(position: number, count: number): number {
  if (position < 0) return position + count
  return position >= count ? position - count : position
}

/** The node so many steps on from another, or back from it when `steps` is negative. */
export function nodeBeside({ order, place }: Tour, node: number, steps: number): number {
  return order[wrapped(place[node]! + steps, order.length)]!
}

/** Turns the stretch between two positions round, or all the rest of the tour when that is shorter: the same tour. */
export function reverseStretch(tour: Tour, from: number, to: number): void {
  const count = tour.order.length
  const length = wrapped(to - from, count) + 1
  const isLong = 2 * length > count
  let low = isLong ? wrapped(to + 1, count) : from
  let high = isLong ? wrapped(from - 1, count) : to
  for (let swaps = (isLong ? count - length : length) >> 1; swaps > 0; swaps--) {
    const node = tour.order[low]!
    put(tour, low, tour.order[high]!)
    put(tour, high, node)
    low = wrapped(low + 1, count)
    high = wrapped(high - 1, count)
  }
}

/** Takes a stretch out and puts it in again behind the node at the position `behind`, as it is or turned round. */
export function moveStretch(tour: Tour, { from, length }: Stretch, behind: number, isTurned: boolean): void {
  const count = tour.order.length
  const nodeAt = (position: number) => tour.order[wrapped(position, count)]!
  const moved = Array.from({ length }, (_, index) => nodeAt(from + index))
  if (isTurned) moved.reverse()
  const ahead = wrapped(behind - wrapped(from + length - 1, count), count)
  const back = count - length - ahead
  // The nodes between the old gap and the new one make room, on whichever side they are fewer.
  if (ahead <= back) for (let step = 0; step < ahead; step++) put(tour, wrapped(from + step, count), nodeAt(from + length + step))
  else for (let step = 1; step <= back; step++) put(tour, wrapped(from + length - step, count), nodeAt(from - step))
  const start = ahead <= back ? from + ahead : from - back
  moved.forEach((node, index) => put(tour, wrapped(start + index, count), node))
}

/**
 * A double bridge: three neighbouring stretches in the reverse order, each in its own direction. No chain of turned
 * stretches that all shorten the tour leads there, so it opens what they have closed.
 *
 * @returns the nodes whose neighbours changed
 */
export function exchangeOuter(tour: Tour, from: number, [first, middle, last]: readonly [number, number, number]): number[] {
  const count = tour.order.length
  const length = first + middle + last
  const nodes = Array.from({ length }, (_, index) => tour.order[wrapped(from + index, count)]!)
  const exchanged = [...nodes.slice(first + middle), ...nodes.slice(first, first + middle), ...nodes.slice(0, first)]
  exchanged.forEach((node, index) => put(tour, wrapped(from + index, count), node))
  const seams = [from, from + last, from + last + middle, from + length]
  return seams.flatMap((seam) => [tour.order[wrapped(seam - 1, count)]!, tour.order[wrapped(seam, count)]!])
}

function put({ order, place }: Tour, position: number, node: number): void {
  order[position] = node
  place[node] = position
}
