import type { CutPlan, PieceSet } from './cut-plan.ts'
import { type Cord, roomOf, type Rules } from './job.ts'
import { place } from './place.ts'
import { loadsOf } from './score.ts'
import { withSplit } from './split.ts'

/** Sets whole where that can be, then over the reels of one batch, then over any. Nothing of a set is cut if not all can be. */
export function planSets(cords: readonly Cord[], sets: readonly PieceSet[], rules: Rules): CutPlan {
  const longest = Math.max(0, ...cords.map((cord) => roomOf(cord, rules)))
  const [whole, tooLong] = [sets.filter(({ size }) => size <= longest), sets.filter(({ size }) => size > longest)]
  const nothing: CutPlan = { cuts: [], taken: cords.map(() => 0), split: [], notCut: [], kept: [], isProved: true }
  const wholeFirst = splitWhatIsLeft(cords, withWhole(cords, nothing, whole, rules), tooLong, rules)
  if (tooLong.length === 0) return wholeFirst
  const splitFirst = splitWhatIsLeft(cords, withWhole(cords, withSplit(cords, nothing, tooLong, rules), whole, rules), [], rules)
  return notCutBy(splitFirst) < notCutBy(wholeFirst) ? splitFirst : wholeFirst
}

const notCutBy = ({ notCut }: CutPlan) => notCut.reduce((sum, { size }) => sum + size, 0)

function withWhole(cords: readonly Cord[], plan: CutPlan, sets: readonly PieceSet[], rules: Rules): CutPlan {
  const job = { cords, taken: plan.taken, items: sets, rules }
  const { placing, isProved } = place(job)
  const placed = sets.flatMap((set, item) => (placing[item] === -1 ? [] : { set, reel: placing[item] ?? -1 }))
  return {
    ...plan,
    cuts: [...plan.cuts, ...placed.flatMap(({ set, reel }) => set.parts.map((part) => ({ part, reel })))],
    taken: loadsOf(job, placing),
    notCut: [...plan.notCut, ...sets.filter((_, item) => placing[item] === -1)],
    kept: [...plan.kept, ...placed.map(({ set }) => set)],
    isProved: plan.isProved && isProved,
  }
}

function splitWhatIsLeft(cords: readonly Cord[], plan: CutPlan, tooLong: readonly PieceSet[], rules: Rules): CutPlan {
  return withSplit(cords, { ...plan, notCut: [] }, [...tooLong, ...plan.notCut], rules)
}
