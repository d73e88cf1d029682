import { daysBetween, type Instant, type Millimetre, mm } from '@glandkeeper/units/quantity'

/** ample: room to travel · watch: keep looking · book: book a repack · spent: no usable travel. */
export type Standing = 'ample' | 'watch' | 'book' | 'spent'

/** A gland stands at a word when its reserve or the days left on a straight line are at or under these. */
export interface StandingBands {
  readonly book: { readonly reserve: Millimetre; readonly days: number }
  readonly watch: { readonly reserve: Millimetre; readonly days: number }
}

/**
 * Settings of ours until chance replaces the straight line: about two half turns of an M12 stud, or two months,
 * to book; about four half turns, or half a year, to watch.
 */
export const standingBands: StandingBands = {
  book: { reserve: mm(2), days: 60 },
  watch: { reserve: mm(4), days: 180 },
}

/**
 * @returns `watch` where no gap is known: somebody has to go and look
 * @example standingOf({ reserve: mm(0), runsOutAt: null }, now) // → 'spent'
 */
export function standingOf(
  state: { readonly reserve: Millimetre | null; readonly runsOutAt: Instant | null },
  now: Instant,
  bands: StandingBands = standingBands,
): Standing {
  const { reserve, runsOutAt } = state
  if (reserve === null) return 'watch'
  if (reserve <= 0) return 'spent'
  const daysLeft = runsOutAt === null ? Infinity : daysBetween(now, runsOutAt)
  if (reserve <= bands.book.reserve || daysLeft <= bands.book.days) return 'book'
  if (reserve <= bands.watch.reserve || daysLeft <= bands.watch.days) return 'watch'
  return 'ample'
}
