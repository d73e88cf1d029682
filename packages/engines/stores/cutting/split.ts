import type { CutPlan, PieceSet } from './cut-plan.ts'
import { type Cord, type Placing, roomOf, type Rules } from './job.ts'
import { place } from './place.ts'
import { loadsOf, scoreOf } from './score.ts'

/** Sets cut over several reels, the largest first: of one batch if that can be, else of any; what is left is not cut. */
export function withSplit(cords: readonly Cord[], plan: CutPlan, sets: readonly PieceSet[], rules: Rules): CutPlan {
  return sets.toSorted((one, other) => other.size - one.size).reduce((so, set) => withSetSplit(cords, so, set, rules), plan)
}

interface Split {
  readonly reels: readonly number[]
  readonly placing: Placing
  readonly taken: readonly number[]
  /** What the ends waste more than before. */
  readonly waste: number
}

function withSetSplit(cords: readonly Cord[], plan: CutPlan, set: PieceSet, rules: Rules): CutPlan {
  const inOneBatch = batchesOf(cords)
    .flatMap((reels) => splitOver(cords, plan, set, rules, reels) ?? [])
    .toSorted((one, other) => one.waste - other.waste)[0]
  const split = inOneBatch ?? splitOver(cords, plan, set, rules, [...cords.keys()])
  if (!split) return { ...plan, notCut: [...plan.notCut, set] }
  const cuts = set.parts.map((part, item) => ({ part, reel: split.reels[split.placing[item] ?? -1] ?? -1 }))
  const taken = [...plan.taken]
  for (const [at, reel] of split.reels.entries()) taken[reel] = split.taken[at] ?? 0
  return {
    ...plan,
    cuts: [...plan.cuts, ...cuts],
    taken,
    split: [
      ...plan.split,
      {
        setId: set.setId,
        over: inOneBatch ? 'one batch' : 'several batches',
        reels: [...new Set(cuts.map(({ reel }) => reel))].toSorted((one, other) => one - other),
      },
    ],
    kept: [...plan.kept, ...set.parts],
    isProved: false,
  }
}

/** All parts of a set on these reels with what is left of them; null where they find no room. */
function splitOver(cords: readonly Cord[], plan: CutPlan, set: PieceSet, rules: Rules, reels: readonly number[]): Split | null {
  const taken = reels.map((reel) => plan.taken[reel] ?? 0)
  const own = reels.flatMap((reel) => cords[reel] ?? [])
  const room = own.reduce((sum, cord, at) => sum + roomOf(cord, rules) - (taken[at] ?? 0), 0)
  if (room < set.size) return null
  const job = { cords: own, taken, items: set.parts, rules }
  const { placing } = place(job)
  const score = scoreOf(job, placing)
  if (score.left > 0) return null
  const before = scoreOf({ ...job, items: [] }, []).waste
  return { reels, placing, taken: loadsOf(job, placing), waste: score.waste - before }
}

/** The reels of each batch, the batch that expires first in front. */
function batchesOf(cords: readonly Cord[]): number[][] {
  const byBatch = new Map<string, number[]>()
  for (const [reel, { batch }] of [...cords.entries()].toSorted(([, one], [, other]) => one.rank - other.rank))
    byBatch.set(batch, [...(byBatch.get(batch) ?? []), reel])
  return [...byBatch.values()]
}
