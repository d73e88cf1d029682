import { type Cord, type Job, type Placing, type Rules, wasteAt } from './job.ts'

/** What a way to cut costs; what stands first counts first. */
export interface Cost {
  /** At the ends of the reels, less the cuts saved there. */
  readonly waste: number
  /** Length times rank: the more is drawn from reels that expire late, the more. */
  readonly late: number
  /** Reels begun, and among as many the longer ones. */
  readonly begun: number
  /** Below 0, the further the longer the longest ends: one long end is worth more than two short ones. */
  readonly evenness: number
}

export interface Score extends Cost {
  /** Size of what finds no room: counts before all else. */
  readonly left: number
}

/** More than all reels of a job are long together, in tenths of a millimetre. */
const A_REEL = 1e10

export const nothing: Cost = { waste: 0, late: 0, begun: 0, evenness: 0 }

/** What it costs to take so much from one reel. */
export function costAt(cord: Cord, taken: number, rules: Rules): Cost {
  return {
    waste: wasteAt(cord, taken, rules),
    late: cord.rank * taken,
    begun: taken > 0 ? A_REEL + cord.length : 0,
    evenness: -(taken ** 2),
  }
}

export function sumOf(one: Cost, other: Cost): Cost {
  return {
    waste: one.waste + other.waste,
    late: one.late + other.late,
    begun: one.begun + other.begun,
    evenness: one.evenness + other.evenness,
  }
}

/** Below 0 when the first is the better one. */
export function compareCosts(one: Cost, other: Cost): number {
  return one.waste - other.waste || one.late - other.late || one.begun - other.begun || one.evenness - other.evenness
}

/** As `compareCosts` of a sum, without making it: this is done millions of times. */
export function compareSum(one: Cost, other: Cost, than: Cost): number {
  return (
    one.waste + other.waste - than.waste ||
    one.late + other.late - than.late ||
    one.begun + other.begun - than.begun ||
    one.evenness + other.evenness - than.evenness
  )
}

/** Below 0 when the first is the better one. */
export function compareScores(one: Score, other: Score): number {
  return one.left - other.left || compareCosts(one, other)
}

export function scoreOf(job: Job, placing: Placing): Score {
  const loads = loadsOf(job, placing)
  const cost = job.cords.reduce((sum, cord, reel) => sumOf(sum, costAt(cord, loads[reel] ?? 0, job.rules)), nothing)
  const left = job.items.reduce((sum, { size }, item) => (placing[item] === -1 ? sum + size : sum), 0)
  return { left, ...cost }
}

/** What is taken from each reel once all is cut. */
export function loadsOf({ taken, items }: Pick<Job, 'taken' | 'items'>, placing: Placing): number[] {
  const loads = [...taken]
  for (const [item, { size }] of items.entries()) {
    const reel = placing[item] ?? -1
    if (reel >= 0) loads[reel] = (loads[reel] ?? 0) + size
  }
  return loads
}

/** Reels something is cut from, and of those untouched that are alike only the first: the others would do no better. */
export function reelsToTry(cords: readonly Cord[], loads: readonly number[]): number[] {
  const seen = new Set<string>()
  return [...cords.entries()].flatMap(([reel, { length, rank }]) => {
    if ((loads[reel] ?? 0) > 0) return reel
    const kind = `${length} ${rank}`
    return seen.has(kind) ? [] : seen.add(kind) && reel
  })
}
