import { type Millimetre, mm, type Ratio } from '@glandkeeper/units/quantity'
import type { Reel } from './cut-input.ts'
import type { CutPlan, Part } from './cut-plan.ts'
import { type Cord, millimetresOf, type Rules } from './job.ts'

/** What is cut from one reel. */
export interface ReelCut {
  readonly reelId: string
  readonly batch: string
  /** In the order to cut, the longest first: what is spoilt can still become a shorter one. */
  readonly pieces: readonly PieceCut[]
  /** Pieces and cuts. */
  readonly used: Millimetre
  readonly end: Millimetre
  readonly endIs: 'returned' | 'scrap' | 'none'
}

/** Like pieces of one set, one after the other. */
export interface PieceCut {
  readonly pieceId: string
  readonly setId: string
  readonly length: Millimetre
  readonly count: number
}

/** A set that no reel had room for as a whole. */
export interface SetSplit {
  readonly setId: string
  readonly over: 'one batch' | 'several batches'
  readonly reelIds: readonly string[]
}

/** A set of which nothing is cut, with the cord it asks for, cuts included. */
export interface SetNotCut {
  readonly setId: string
  readonly pieces: readonly PieceCut[]
  readonly short: Millimetre
}

export interface CutTotals {
  /** Pieces alone. */
  readonly cut: Millimetre
  /** Scrap ends and cuts. */
  readonly wasted: Millimetre
  /** Of pieces and waste together: what goes back to the store is neither. */
  readonly wastedShare: Ratio
  readonly returned: Millimetre
  readonly short: Millimetre
  /** Less than this is wasted by no way to cut the same sets from these reels, those whole that are whole here. */
  readonly bound: Millimetre
  readonly boundShare: Ratio
}

export const inMillimetres = (tenths: number): Millimetre => mm(millimetresOf(tenths))

/** The reels that are cut, in the order given. */
export function reelCuts(reels: readonly Reel[], cords: readonly Cord[], plan: CutPlan, { keep }: Rules): ReelCut[] {
  const partsOn = new Map<number, Part[]>()
  for (const { part, reel } of plan.cuts) {
    const parts = partsOn.get(reel)
    if (parts) parts.push(part)
    else partsOn.set(reel, [part])
  }
  return reels.flatMap(({ id, batch }, reel) => {
    const [parts, cord] = [partsOn.get(reel), cords[reel]]
    if (!parts || !cord) return []
    // A last piece that ends with the reel needs less than a whole cut.
    const end = Math.max(0, cord.length - (plan.taken[reel] ?? 0))
    const endIs = end === 0 ? 'none' : end < keep ? 'scrap' : 'returned'
    const used = inMillimetres(cord.length - end)
    return { reelId: id, batch, pieces: longestFirst(parts), used, end: inMillimetres(end), endIs }
  })
}

export function splits(reels: readonly Reel[], { split }: CutPlan): SetSplit[] {
  return split.map(({ setId, over, reels: on }) => ({ setId, over, reelIds: on.flatMap((reel) => reels[reel]?.id ?? []) }))
}

export function setsNotCut({ notCut }: CutPlan): SetNotCut[] {
  return notCut.map(({ setId, parts, size }) => ({ setId, pieces: longestFirst(parts), short: inMillimetres(size) }))
}

function longestFirst(parts: readonly Part[]): PieceCut[] {
  const counts = new Map<string, { readonly part: Part; count: number }>()
  for (const part of parts) {
    const known = counts.get(part.pieceId)
    if (known) known.count += 1
    else counts.set(part.pieceId, { part, count: 1 })
  }
  return [...counts.values()]
    .toSorted((one, other) => other.part.length - one.part.length)
    .map(({ part: { pieceId, setId, length }, count }) => ({ pieceId, setId, length: inMillimetres(length), count }))
}
