import { dealAnew, type Side } from './deal.ts'
import { type Job, type Placing, roomOf } from './job.ts'
import { reelsToTry } from './score.ts'

/** Each reel is tried with so many others in a sweep. */
const PARTNERS = 40
const SWEEPS = 12

/**
 * Takes two reels at a time and deals what is cut from them anew, the best of all ways, until no two can be bettered.
 * What found no room takes part as a reel of its own.
 */
export function improve(job: Job, placing: Placing): Placing {
  const heap: Side = { cord: null, taken: 0, room: Infinity, items: [], changedIn: 0 }
  const reels = job.cords.map((cord, reel): Side => {
    return { cord, taken: job.taken[reel] ?? 0, room: roomOf(cord, job.rules), items: [], changedIn: 0 }
  })
  for (const [item, { size }] of job.items.entries()) {
    const side = reels[placing[item] ?? -1] ?? heap
    side.items = [...side.items, { item, size }]
  }
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    const tried = reelsToTry(job.cords, reels.map(loadOf)).flatMap((reel) => reels[reel] ?? [])
    const pairs = tried.flatMap((side, at) => [heap, ...partnersOf(tried, at, sweep)].map((other) => [side, other] as const))
    // Two sides that have not changed since they were tried are not tried again.
    const isBetter = pairs.map(
      ([one, other]) => Math.max(one.changedIn, other.changedIn) >= sweep - 1 && dealAnew(one, other, job.rules, sweep),
    )
    if (!isBetter.includes(true)) break
  }
  const better = job.items.map(() => -1)
  for (const [reel, { items }] of reels.entries()) for (const { item } of items) better[item] = reel
  return better
}

const loadOf = ({ items, taken }: Side) => items.reduce((sum, { size }) => sum + size, taken)

/** The reels behind one, each sweep some others where there are many. */
function partnersOf(reels: readonly Side[], at: number, sweep: number): Side[] {
  const behind = reels.slice(at + 1)
  const from = behind.length > PARTNERS ? (sweep * PARTNERS) % behind.length : 0
  return [...behind.slice(from), ...behind.slice(0, from)].slice(0, PARTNERS)
}
