/** A reel of the store, or a box, as much of it as an entry needs: it is kept with what is being filled in. */
export interface Reel {
  readonly lotId: string
  /** As it was chosen, for when the store cannot be asked any more. */
  readonly says: string
  readonly unit: 'm' | 'pc'
  /** Metres of cord, or pieces, in one ring; null where the gland was never measured. */
  readonly perRing: number | null
}

/** Where the packing came from. Without a reel it is of a kit that was issued before, or nobody says. */
export interface PackingSource {
  readonly batch: string
  readonly reel: Reel | null
  /** Metres or pieces as somebody said; null takes what was worked out. */
  readonly taken: number | null
}

export const noSource: PackingSource = { batch: '', reel: null, taken: null }

const ROUNDING_DUST = 1e-9

/**
 * How much a number of rings takes of a reel, to the centimetre above; null where it cannot be said.
 *
 * @example workedOut({ lotId, says: 'R-12', unit: 'm', perRing: 0.1147 }, 5, 1) // → 0.69
 */
export function workedOut({ unit, perRing }: Reel, rings: number | null, wrapsMore: number): number | null {
  if (perRing === null || rings === null) return null
  // A set is wound on a bar with a wrap more than it has rings; pressed rings are counted.
  const many = unit === 'm' ? rings + wrapsMore : rings
  return Math.ceil(perRing * many * 100 - ROUNDING_DUST) / 100
}

/** What leaves the reel: as it was said, else as it is worked out; null without a reel, or where neither is known. */
export function takenOf({ reel, taken }: PackingSource, rings: number | null, wrapsMore: number): number | null {
  return reel && (taken ?? workedOut(reel, rings, wrapsMore))
}

/** What an entry says of where its packing came from. */
export function sourceFacts(source: PackingSource, rings: number | null, wrapsMore: number) {
  const { batch, reel } = source
  const amount = takenOf(source, rings, wrapsMore)
  return {
    ...(batch.trim() !== '' && { batch }),
    ...(reel && amount !== null && { fromStore: [{ lotId: reel.lotId, amount }] }),
  }
}
