/** A reel to cut from. All lengths of a job are whole tenths of a millimetre, so that sums are exact. */
export interface Cord {
  readonly length: number
  readonly batch: string
  /** 0 for those that expire first, 1 for the next … */
  readonly rank: number
}

/** What stays together on one reel: a set, or one piece of a set that is split. */
export interface Item {
  /** Length of its pieces and of a cut behind each. */
  readonly size: number
}

/** How a job is cut. */
export interface Rules {
  /** Lost in each cut. */
  readonly cut: number
  /** An end this long goes back to the store. */
  readonly keep: number
}

/** Items to place on reels, some of which have something cut from them already. */
export interface Job<Each extends Item = Item> {
  readonly cords: readonly Cord[]
  /** Cut from each reel already, with the cuts. */
  readonly taken: readonly number[]
  readonly items: readonly Each[]
  readonly rules: Rules
}

/** Reel of each item; -1 for what finds no room. */
export type Placing = readonly number[]

const TENTHS = 10
/** A length a hair above a tenth is that tenth: sums of binary fractions miss their mark by less. */
const HAIR = 1e-6

/** Pieces are cut to the next tenth up. */
export const tenthsUp = (millimetres: number): number => Math.ceil(millimetres * TENTHS - HAIR)
/** Reels are taken to the tenth down. */
export const tenthsDown = (millimetres: number): number => Math.floor(millimetres * TENTHS + HAIR)
export const millimetresOf = (tenths: number): number => tenths / TENTHS

/** What a reel takes, with a cut behind each piece: the last piece may end where the reel ends, and needs no cut. */
export const roomOf = (cord: Cord, { cut }: Rules): number => cord.length + cut

/**
 * What a reel wastes at its end, below 0 where the last cut is saved, when so much is taken from it.
 *
 * @example wasteAt({ length: 80000, batch: 'a', rank: 0 }, 79000, { cut: 0, keep: 5000 }) // → 1000
 * @example wasteAt({ length: 80000, batch: 'a', rank: 0 }, 70000, { cut: 0, keep: 5000 }) // → 0
 */
export function wasteAt(cord: Cord, taken: number, { keep }: Rules): number {
  const end = cord.length - taken
  return taken > 0 && end < keep ? end : 0
}
