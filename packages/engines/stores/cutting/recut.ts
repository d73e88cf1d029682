import { type SeededChance, seededChance } from '../../schedule/seeded-chance.ts'
import { placeExactly } from './exact.ts'
import { type Job, type Placing, wasteAt } from './job.ts'
import { compareScores, loadsOf, reelsToTry, scoreOf } from './score.ts'

/** Reels that are cut anew together, and the most of their items. */
const REELS = 3
const ITEMS = 8
/** The first of them is the one of so many that wastes most. */
const RIVALS = 30
const ROUNDS = 600
/** Rounds that better nothing, for each reel there is and besides, after which it is left. */
const PATIENCE_PER_REEL = 4
const PATIENCE = 80
/** The search is the same each time. */
const SEED = 1

/** Cuts a few reels anew in the best way there is, again and again, until nothing is left and no more is wasted than the bound. */
export function recut(job: Job, placing: Placing, bound: number): Placing {
  const chance = seededChance(SEED)
  const better = [...placing]
  const loads = loadsOf(job, placing)
  let { left, waste } = scoreOf(job, placing)
  const patience = PATIENCE + PATIENCE_PER_REEL * job.cords.length
  let idle = 0
  for (let round = 0; round < ROUNDS && idle < patience && (left > 0 || waste > bound); round += 1) {
    const reels = reelsFor(job, loads, chance)
    const theirs = [...job.items.keys()].filter((item) => better[item] === -1 || reels.includes(better[item] ?? -1))
    const items = drawn(theirs, ITEMS, chance)
    const part = partOf(job, better, loads, reels, items)
    const before = items.map((item) => reels.indexOf(better[item] ?? -1))
    const after = placeExactly(part)
    const [was, is] = [scoreOf(part, before), scoreOf(part, after)]
    // The best way there is, so never a worse one; an equal one leads on to others.
    idle = compareScores(is, was) < 0 ? 0 : idle + 1
    left += is.left - was.left
    waste += is.waste - was.waste
    for (const [place, item] of items.entries()) better[item] = reels[after[place] ?? -1] ?? -1
    for (const [place, load] of loadsOf(part, after).entries()) loads[reels[place] ?? -1] = load
  }
  return better
}

/** One that wastes much, and others by chance. */
function reelsFor({ cords, rules }: Job, loads: readonly number[], chance: SeededChance): number[] {
  const wasteOf = (reel: number) => {
    const cord = cords[reel]
    return cord ? wasteAt(cord, loads[reel] ?? 0, rules) : 0
  }
  const reels = reelsToTry(cords, loads)
  const [first = 0] = drawn(reels, RIVALS, chance).toSorted((one, other) => wasteOf(other) - wasteOf(one))
  const others = reels.filter((reel) => reel !== first)
  return [first, ...drawn(others, REELS - 1, chance)]
}

/** A job of its own: these reels without these items, and these items. */
function partOf(job: Job, placing: Placing, loads: readonly number[], reels: readonly number[], items: readonly number[]): Job {
  const sizeOf = (item: number) => job.items[item]?.size ?? 0
  const takenOf = (reel: number) =>
    items.reduce((sum, item) => (placing[item] === reel ? sum - sizeOf(item) : sum), loads[reel] ?? 0)
  return {
    cords: reels.flatMap((reel) => job.cords[reel] ?? []),
    taken: reels.map(takenOf),
    items: items.map((item) => ({ size: sizeOf(item) })),
    rules: job.rules,
  }
}

/** So many of them, by chance. */
function drawn(from: readonly number[], count: number, chance: SeededChance): number[] {
  const left = [...from]
  const taken: number[] = []
  while (taken.length < count && left.length > 0) taken.push(...left.splice(chance.below(left.length), 1))
  return taken
}
