import { addDays, type Day, days, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import { DAYS_PER_MONTH, startOfWatch, type WatchedTime } from './leak-exposure.ts'

/**
 * Bands of the age of a packing, in order, each with the months at which it ends.
 *
 * @source SRC-793 bands of packing age (docs/sources.md)
 */
export const ageBands = [
  { band: 'first month', endsAtMonth: 1 },
  { band: '1 to 6 months', endsAtMonth: 6 },
  { band: '6 to 12 months', endsAtMonth: 12 },
  { band: '1 to 2 years', endsAtMonth: 24 },
  { band: '2 to 4 years', endsAtMonth: 48 },
  { band: 'over 4 years', endsAtMonth: null },
  { band: 'not known', endsAtMonth: null },
] as const

export type AgeBand = (typeof ageBands)[number]['band']

/**
 * The band a packing of this age is in; the end of a band belongs to the next. `not known` where nobody recorded the repack.
 *
 * @source SRC-793 bands of packing age (docs/sources.md)
 * @param age days since the repack
 * @example ageBandOf(days(40)) // → '1 to 6 months'
 */
export function ageBandOf(age: Day | null): AgeBand {
  if (age === null) return 'not known'
  const found = ageBands.find(({ endsAtMonth }) => endsAtMonth !== null && age < endsAtMonth * DAYS_PER_MONTH)
  return found?.band ?? 'over 4 years'
}

/**
 * Days watched and leaks opened, by the age of the packing then. The time is that of leakExposure.
 *
 * @source SRC-793 bands of packing age (docs/sources.md)
 * @returns every band in order; their days and leaks sum up to those of leakExposure
 * @example exposureByAge({ facts: standing, leaks: [], from: instant(0), to: addDays(instant(0), days(30)) })[6] // → { band: 'not known', days: 30, leaks: 0 }
 */
export function exposureByAge(
  watch: WatchedTime,
): readonly { readonly band: AgeBand; readonly days: Day; readonly leaks: number }[] {
  const daysIn = new Map<AgeBand, number>()
  const leaksIn = new Map<AgeBand, number>()
  const start = startOfWatch(watch.facts, watch.from)
  if (start !== null) {
    for (const piece of packings(watch, start)) addDaysByBand(daysIn, piece)
    for (const { openedAt, packedAt } of watch.leaks) {
      if (!(openedAt >= start && openedAt < watch.to)) continue
      const band = ageBandOf(packedAt === null ? null : daysBetween(packedAt, openedAt))
      leaksIn.set(band, (leaksIn.get(band) ?? 0) + 1)
    }
  }
  return ageBands.map(({ band }) => ({ band, days: days(daysIn.get(band) ?? 0), leaks: leaksIn.get(band) ?? 0 }))
}

interface Packing {
  readonly packedAt: Instant | null
  readonly from: Instant
  readonly to: Instant
}

/** Each packing in the box, with the part of its time that was watched. */
function packings({ facts, to }: WatchedTime, start: Instant): Packing[] {
  const repacks = facts.flatMap(({ takenAt, fact }) => (fact.kind === 'packing.renewed' ? [takenAt] : []))
  const begun = [null, ...repacks]
  return begun.map((packedAt, index) => {
    const end = repacks[index] ?? to
    return { packedAt, from: packedAt !== null && packedAt > start ? packedAt : start, to: end < to ? end : to }
  })
}

function addDaysByBand(daysIn: Map<AgeBand, number>, { packedAt, from, to }: Packing): void {
  let at = from
  for (const { band, endsAtMonth } of ageBands) {
    if ((band === 'not known') !== (packedAt === null)) continue
    const ends = packedAt === null || endsAtMonth === null ? to : addDays(packedAt, days(endsAtMonth * DAYS_PER_MONTH))
    const until = ends < to ? ends : to
    if (!(until > at)) continue
    daysIn.set(band, (daysIn.get(band) ?? 0) + daysBetween(at, until))
    at = until
  }
}
