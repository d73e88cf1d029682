import { type Job, type Placing, roomOf, wasteAt } from './job.ts'
import { reachable } from './reachable.ts'

/** Items looked at for one reel: the largest and the smallest that are left. With these nearly every length is reached. */
const LARGE_ONES = 30
const SMALL_ONES = 20

export interface FillOrder {
  /** Reels in the order they are filled. */
  readonly reels: readonly number[]
  /** Length used that outweighs one wasted: 0 fills a reel as far as it goes, more stops where less is wasted. */
  readonly wasteWorth: number
}

/** Fills reel after reel, each as far as it goes, or as far as its end still goes back. */
export function fill(job: Job, { reels, wasteWorth }: FillOrder): Placing {
  const { rules } = job
  const placing = job.items.map(() => -1)
  let left = largestFirst(job)
  for (const reel of reels) {
    const cord = job.cords[reel]
    if (!cord || left.length === 0) continue
    const already = job.taken[reel] ?? 0
    const looked = left.length <= LARGE_ONES + SMALL_ONES ? left : [...left.slice(0, LARGE_ONES), ...left.slice(-SMALL_ONES)]
    const room = roomOf(cord, rules) - already
    const sizes = looked.map(({ size }) => size)
    const { largestUpTo, partsOf } = reachable(sizes, room, true)
    const [full, open] = [largestUpTo(room), largestUpTo(cord.length - rules.keep - already)]
    const isWorthIt = full - open >= wasteWorth * wasteAt(cord, already + full, rules)
    for (const part of partsOf(isWorthIt ? full : open)) {
      const item = looked[part]?.item
      if (item !== undefined) placing[item] = reel
    }
    left = left.filter(({ item }) => placing[item] === -1)
  }
  return placing
}

/** The largest item first, each to the reel where it wastes least and leaves least room. */
export function bestFit(job: Job): Placing {
  const loads = [...job.taken]
  const placing = job.items.map(() => -1)
  for (const { item, size } of largestFirst(job)) {
    let best: { readonly reel: number; readonly waste: number; readonly room: number } | null = null
    for (const [reel, cord] of job.cords.entries()) {
      const load = loads[reel] ?? 0
      const room = roomOf(cord, job.rules) - load - size
      if (room < 0) continue
      const waste = wasteAt(cord, load + size, job.rules) - wasteAt(cord, load, job.rules)
      if (!best || waste < best.waste || (waste === best.waste && room < best.room)) best = { reel, waste, room }
    }
    if (!best) continue
    placing[item] = best.reel
    loads[best.reel] = (loads[best.reel] ?? 0) + size
  }
  return placing
}

function largestFirst({ items }: Job): { readonly item: number; readonly size: number }[] {
  return items.map(({ size }, item) => ({ item, size })).toSorted((one, other) => other.size - one.size)
}
