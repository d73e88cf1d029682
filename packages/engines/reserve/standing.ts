import { type Millimetre, mm, type Ratio, ratio } from '@glandkeeper/units/quantity'

/** ample: room to travel · watch: keep looking · book: book a repack · spent: no usable travel. */
export type Standing = 'ample' | 'watch' | 'book' | 'spent'

/**
 * A gland stands at a word when its reserve is at or under these millimetres, or the chance that it is used up before
 * the next stop is at or over this.
 */
export interface StandingBands {
  readonly book: { readonly reserve: Millimetre; readonly chance: Ratio }
  readonly watch: { readonly reserve: Millimetre; readonly chance: Ratio }
}

/** Settings of ours; each site may change them. */
export const standingBands: StandingBands = {
  book: { reserve: mm(2), chance: ratio(0.3) },
  watch: { reserve: mm(4), chance: ratio(0.05) },
}

/**
 * The word a gland stands at.
 *
 * @param state chance is null where nothing could be forecast
 * @returns `watch` where no gap is known: somebody has to go and look
 * @example standingOf({ reserve: mm(9), chanceBeforeStop: ratio(0.4) }) // → 'book'
 */
export function standingOf(
  state: { readonly reserve: Millimetre | null; readonly chanceBeforeStop: Ratio | null },
  bands: StandingBands = standingBands,
): Standing {
  const { reserve, chanceBeforeStop } = state
  if (reserve === null) return 'watch'
  if (reserve <= 0) return 'spent'
  const chance = chanceBeforeStop ?? 0
  if (reserve <= bands.book.reserve || chance >= bands.book.chance) return 'book'
  if (reserve <= bands.watch.reserve || chance >= bands.watch.chance) return 'watch'
  return 'ample'
}
