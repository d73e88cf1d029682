import type { Item } from './job.ts'

/** One piece to cut. */
export interface Part extends Item {
  readonly pieceId: string
  readonly setId: string
  readonly length: number
}

/** Pieces that are cut from one reel if that can be. */
export interface PieceSet extends Item {
  readonly setId: string
  readonly parts: readonly Part[]
}

export interface SplitSet {
  readonly setId: string
  readonly over: 'one batch' | 'several batches'
  readonly reels: readonly number[]
}

/** A way to cut sets from reels. */
export interface CutPlan {
  readonly cuts: readonly { readonly part: Part; readonly reel: number }[]
  /** Taken from each reel, with the cuts. */
  readonly taken: readonly number[]
  readonly split: readonly SplitSet[]
  readonly notCut: readonly PieceSet[]
  /** What stayed together: whole sets, and the pieces of split ones. */
  readonly kept: readonly Item[]
  /** That no other way to cut these sets, whole as they are, wastes less. */
  readonly isProved: boolean
}
