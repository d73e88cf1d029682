import { type AgeBand, ageBandOf, ageBands } from '@glandkeeper/engines/leak/exposure-by-age'
import { DAYS_PER_MONTH, openWithin } from '@glandkeeper/engines/leak/leak-exposure'
import { tightens } from '@glandkeeper/engines/leak/looks'
import { addDays, days, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import type { WatchedGland } from './watched-gland.ts'

/** What was seen of a gland, or of many, in a time watched. */
export interface Watched {
  readonly days: number
  readonly daysLeaking: number
  readonly nips: number
  readonly leaks: number
}

/** A part of the time watched: one packing while it was in one band of age, or a leak that opened there. */
export interface WatchedPiece extends Watched {
  /** Place among the packing lives of the gland. */
  readonly packing: number
  readonly family: string
  readonly band: AgeBand
}

interface Stretch extends Pick<WatchedPiece, 'packing' | 'family' | 'band'> {
  readonly from: Instant
  readonly to: Instant
}

/** As the list of leaks calls a packing nobody recorded. */
export const NOT_KNOWN = 'not known'

export const nothingWatched: Watched = { days: 0, daysLeaking: 0, nips: 0, leaks: 0 }

export function together(one: Watched, other: Watched): Watched {
  return {
    days: one.days + other.days,
    daysLeaking: one.daysLeaking + other.daysLeaking,
    nips: one.nips + other.nips,
    leaks: one.leaks + other.leaks,
  }
}

/** Sums of pieces by a key, keys in the order met. */
export function summedBy<Key>(pieces: readonly WatchedPiece[], keyOf: (piece: WatchedPiece) => Key): Map<Key, Watched> {
  const sums = new Map<Key, Watched>()
  for (const piece of pieces) sums.set(keyOf(piece), together(sums.get(keyOf(piece)) ?? nothingWatched, piece))
  return sums
}

/** The watch of a gland since a moment, cut where the packing changes and where it grows into another band of age. */
export function watchedPieces(gland: WatchedGland, since: Instant): WatchedPiece[] {
  const from = since > gland.from ? since : gland.from
  if (!(gland.to > from)) return []
  const nips = gland.facts.flatMap(({ takenAt, fact }) => (tightens(fact) ? [takenAt] : []))
  const spells = gland.leaks.flatMap((leak) => leak.spells)
  const timed = gland.history.lives
    .flatMap((life, packing) => stretchesOf(life, packing))
    .flatMap((stretch): WatchedPiece[] => {
      const begins = stretch.from > from ? stretch.from : from
      const ends = stretch.to < gland.to ? stretch.to : gland.to
      if (!(ends > begins)) return []
      const { packing, family, band } = stretch
      const nipped = nips.reduce((sum, at) => (at >= begins && at < ends ? sum + 1 : sum), 0)
      const daysLeaking = openWithin(spells, begins, ends)
      return [{ packing, family, band, days: daysBetween(begins, ends), daysLeaking, nips: nipped, leaks: 0 }]
    })
  return [...timed, ...openedSince(gland, from)]
}

const ENDLESS = 8.64e15 as Instant

/** One packing, cut where it grows into the next band of age. */
function stretchesOf({ from, to, family }: WatchedGland['history']['lives'][number], packing: number): Stretch[] {
  const end = to ?? ENDLESS
  if (from === null) return [{ packing, family: NOT_KNOWN, band: NOT_KNOWN, from: 0 as Instant, to: end }]
  let begins = from
  const stretches: Stretch[] = []
  for (const { band, endsAtMonth } of ageBands) {
    if (band === NOT_KNOWN || !(end > begins)) continue
    const grown = endsAtMonth === null ? end : addDays(from, days(endsAtMonth * DAYS_PER_MONTH))
    const ends = grown < end ? grown : end
    stretches.push({ packing, family: family ?? NOT_KNOWN, band, from: begins, to: ends })
    begins = ends
  }
  return stretches
}

/** Each leak for itself, under the packing and the age that the list of leaks has it under. */
function openedSince({ leaks, history, to }: WatchedGland, from: Instant): WatchedPiece[] {
  return leaks
    .filter(({ openedAt }) => openedAt >= from && openedAt < to)
    .map(({ openedAt, packedAt, family }) => ({
      ...nothingWatched,
      packing: history.lives.findLastIndex((life) => life.from === packedAt),
      family: family ?? NOT_KNOWN,
      band: ageBandOf(packedAt === null ? null : daysBetween(packedAt, openedAt)),
      leaks: 1,
    }))
}
