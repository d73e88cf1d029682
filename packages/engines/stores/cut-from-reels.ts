import { ratio } from '@glandkeeper/units/quantity'
import type { Outcome } from '../outcome.ts'
import { leastWaste } from './cutting/bound.ts'
import { type CutInput, faultOfCutInput, type Piece, type Reel } from './cutting/cut-input.ts'
import type { CutPlan, PieceSet } from './cutting/cut-plan.ts'
import {
  type CutTotals,
  inMillimetres,
  type ReelCut,
  reelCuts,
  type SetNotCut,
  setsNotCut,
  type SetSplit,
  splits,
} from './cutting/cut-report.ts'
import { type Cord, type Rules, tenthsDown, tenthsUp, wasteAt } from './cutting/job.ts'
import { planSets } from './cutting/plan-sets.ts'
import { pricedBound } from './cutting/priced-bound.ts'

export interface CutFromReels {
  /** Reels that are cut, in the order given. */
  readonly reels: readonly ReelCut[]
  readonly split: readonly SetSplit[]
  readonly notCut: readonly SetNotCut[]
  readonly totals: CutTotals
}

/**
 * Which pieces to cut from which reel, in which order, so that least is wasted, and how much no cutting can spare.
 *
 *     waste = cuts + ends shorter than the keep length         mm
 *
 * What counts, in this order: that most is cut; that sets stay whole; that least is wasted; that what expires first is
 * used first; that few reels are begun, short ones before long ones; that one long end is left rather than two short
 * ones. A set that fits on no reel is split over reels of one batch, if that cannot be over any, and is named; a set of
 * which not all can be cut is not cut. Lengths are taken to the tenth of a millimetre, pieces up and reels down. A last
 * piece may end where its reel ends, and then needs no cut. Up to 11 sets or so all ways are looked at; beyond that the
 * way is a search's, and the bound says how far it may be from the best. It knows no today: leave out what has expired.
 *
 * @source SRC-770 to SRC-774 search and bounds · SRC-775 what counts, set by us (docs/sources.md)
 * @returns lengths in mm, shares of pieces and waste; or `cutting/too-many`, `cutting/twice`, `day/not-a-day`, and what is no length or count
 * @example cutFromReels({ reels: [{ id: 'R1', batch: 'B1', length: mm(1000), expiresOn: null }], pieces: [{ id: 'ring', setId: 'V1', length: mm(150), count: 5 }], sawCut: mm(0), keepLength: mm(300) }).totals.wasted // → 250
 * @example cutFromReels({ reels: [{ id: 'R1', batch: 'B1', length: mm(1000), expiresOn: null }], pieces: [{ id: 'ring', setId: 'V1', length: mm(150), count: 5 }], sawCut: mm(2), keepLength: mm(200) }).reels[0].endIs // → 'returned'
 */
export function cutFromReels(input: CutInput): Outcome<CutFromReels> {
  const fault = faultOfCutInput(input)
  if (fault) return fault
  const rules: Rules = { cut: tenthsUp(input.sawCut), keep: tenthsUp(input.keepLength) }
  const cords = cordsOf(input.reels)
  const plan = planSets(cords, setsOf(input.pieces, rules), rules)
  return {
    ok: true,
    reels: reelCuts(input.reels, cords, plan, rules),
    split: splits(input.reels, plan),
    notCut: setsNotCut(plan),
    totals: totalsOf(cords, plan, rules),
  }
}

function cordsOf(reels: readonly Reel[]): Cord[] {
  const days = [...new Set(reels.flatMap(({ expiresOn }) => expiresOn ?? []))].toSorted()
  return reels.map(({ length, batch, expiresOn }) => ({
    length: tenthsDown(length),
    batch,
    rank: expiresOn === null ? days.length : days.indexOf(expiresOn),
  }))
}

function setsOf(pieces: readonly Piece[], { cut }: Rules): PieceSet[] {
  const sets = new Map<string, PieceSet>()
  for (const { id, setId, length, count } of pieces) {
    const part = { pieceId: id, setId, length: tenthsUp(length), size: tenthsUp(length) + cut }
    const before = sets.get(setId)
    const parts = [...(before?.parts ?? []), ...Array.from({ length: count }, () => part)]
    sets.set(setId, { setId, parts, size: (before?.size ?? 0) + count * part.size })
  }
  return [...sets.values()]
}

function totalsOf(cords: readonly Cord[], plan: CutPlan, rules: Rules): CutTotals {
  const cut = plan.cuts.reduce((sum, { part }) => sum + part.length, 0)
  const atCuts = plan.cuts.length * rules.cut
  const atEnds = cords.reduce((sum, cord, reel) => sum + wasteAt(cord, plan.taken[reel] ?? 0, rules), 0)
  const isBegun = (reel: number) => (plan.taken[reel] ?? 0) > 0
  const begun = cords.reduce((sum, { length }, reel) => (isBegun(reel) ? sum + length : sum), 0)
  const wasted = atCuts + atEnds
  const bound = atCuts + boundAtEnds(cords, plan, rules, atEnds)
  const share = (waste: number) => ratio(cut + waste > 0 ? waste / (cut + waste) : 0)
  return {
    cut: inMillimetres(cut),
    wasted: inMillimetres(wasted),
    wastedShare: share(wasted),
    returned: inMillimetres(begun - cut - wasted),
    short: inMillimetres(plan.notCut.reduce((sum, { size }) => sum + size, 0)),
    bound: inMillimetres(bound),
    boundShare: share(bound),
  }
}

function boundAtEnds(cords: readonly Cord[], { kept, isProved }: CutPlan, rules: Rules, found: number): number {
  if (isProved || kept.length === 0) return found
  const bound = leastWaste(cords, kept, rules)
  return bound >= found ? bound : Math.max(bound, pricedBound(cords, kept, rules, found))
}
