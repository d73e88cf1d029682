import type { KitLine } from '@glandkeeper/contract/kits'
import { type CutFromReels, cutFromReels } from '@glandkeeper/engines/stores/cut-from-reels'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { mm, ratio } from '@glandkeeper/units/quantity'
import { amountInWords, type CordNeed, ringsInWords } from '../stock/index.ts'

export interface CordAtHand {
  /** Of a lot, or of what was handed out of it. */
  readonly id: string
  readonly lotId: string
  readonly label: string
  readonly batch: string
  readonly metres: number
  readonly expiresOn: string | null
}

/** What is cut for a valve. */
export interface PieceToCut {
  readonly tag: string
  readonly need: Pick<CordNeed, 'pieceMm' | 'rings' | 'wraps' | 'stemDiameterMm'>
}

export interface CordToCut {
  readonly pieces: readonly PieceToCut[]
  /** Handed out for this work already: cut first, whatever it wastes. */
  readonly issued: readonly CordAtHand[]
  readonly inStore: readonly CordAtHand[]
}

export type CuttingPlan = Pick<KitLine, 'reels' | 'short' | 'waste'>

const MILLIMETRES_IN_A_METRE = 1000
/** An end as long as this goes back to the store, because it still makes the rings of a small valve. Set by us. */
const KEEP_LENGTH = mm(500)
/** Cord is cut with a knife. */
const NO_SAW = mm(0)

/** Which piece is cut from which reel, so that least is wasted; the wraps of a valve in one piece. */
export function cuttingPlan({ pieces, issued, inStore }: CordToCut): CuttingPlan {
  const first = cutsOf(issued, pieces)
  const then = cutsOf(inStore, notYet(pieces, first))
  const short = new Map(then.notCut.map((set) => [set.setId, set.short]))
  // The bound is that of all cord together: what was handed out need not be where least is wasted.
  const cut = pieces.filter(({ tag }) => !short.has(tag))
  const { bound } = issued.length === 0 ? then.totals : cutsOf([...issued, ...inStore], cut).totals
  const wasted = first.totals.wasted + then.totals.wasted
  const inAll = wasted + first.totals.cut + then.totals.cut
  return {
    reels: [...reelsOf(first, issued, pieces), ...reelsOf(then, inStore, pieces)],
    short: [...short].map(
      ([tag, length]) =>
        `${tag}: ${amountInWords(length / MILLIMETRES_IN_A_METRE, 'm')} in one piece, and no reel left is as long`,
    ),
    waste: cut.length === 0 ? null : { wasted: mm(wasted), share: ratio(wasted / inAll), bound },
  }
}

function notYet(pieces: readonly PieceToCut[], { notCut }: CutFromReels): PieceToCut[] {
  const tags = new Set(notCut.map(({ setId }) => setId))
  return pieces.filter(({ tag }) => tags.has(tag))
}

/** @throws Error where the store holds what cannot be: contract and books let nothing of the kind in */
function cutsOf(cords: readonly CordAtHand[], pieces: readonly PieceToCut[]): CutFromReels {
  const found = cutFromReels({
    reels: cords.map(({ id, batch, metres, expiresOn }) => ({
      id,
      batch,
      expiresOn,
      length: mm(metres * MILLIMETRES_IN_A_METRE),
    })),
    pieces: pieces.map(({ tag, need }) => ({ id: tag, setId: tag, length: mm(need.pieceMm), count: 1 })),
    sawCut: NO_SAW,
    keepLength: KEEP_LENGTH,
  })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

function reelsOf({ reels }: CutFromReels, cords: readonly CordAtHand[], pieces: readonly PieceToCut[]): KitLine['reels'] {
  const cordOf = new Map(cords.map((cord) => [cord.id, cord]))
  const needOf = new Map(pieces.map(({ tag, need }) => [tag, need]))
  return reels.flatMap(({ reelId, pieces: cut, end, endIs }) => {
    const cord = cordOf.get(reelId)
    if (!cord) return []
    const { lotId, label, batch, metres } = cord
    return [
      {
        lotId,
        label,
        batch,
        length: mm(metres * MILLIMETRES_IN_A_METRE),
        left: end,
        isScrap: endIs === 'scrap',
        pieces: cut.map(({ setId, length, count }) => ({ tag: setId, length, count, says: windingInWords(needOf.get(setId)) })),
      },
    ]
  })
}

/** As the cut card has it. */
function windingInWords(need: PieceToCut['need'] | undefined): string {
  if (!need) return ''
  return `${ringsInWords(need.rings)}: wind ${need.wraps} wraps on a bar of ${millimetres(need.stemDiameterMm)}`
}
