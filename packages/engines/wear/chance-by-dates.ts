import { daysBetween, type Instant } from '@glandkeeper/units/quantity'
import { normalDistribution, normalQuantile } from '../stats/normal.ts'

/** Dates of a forecast as they are kept: each with its chance; null is beyond twenty years. */
export interface KeptDate {
  readonly chance: number
  readonly at: Instant | null
}

/** A quarter of an hour: what is used up already has no logarithm of its days. */
const NEAREST_DAYS = 0.01
/** Of ln days, where one date alone is known: forecasts of a few readings scatter about so far. */
const USUAL_DEVIATION = 0.5

/**
 * The chance that the reserve is used up before any day, from the dates a forecast was kept with: between two of them
 * the normal score rises evenly with ln days, and outside them as between the two nearest.
 *
 *     chance = Φ(z₁ + (z₂ - z₁) (ln t - ln t₁) / (ln t₂ - ln t₁))
 *
 * Within 0.02 of the forecast itself between its 2.5 % and 97.5 % dates, so that a plan need not read all entries again.
 *
 * @source SRC-714 chance between kept dates (docs/sources.md)
 * @param dates in order of their chance, each chance above 0 and below 1
 * @returns a function of the moment, from 0 to 1, that never falls
 * @example chanceByDates({ countedFrom: instant(0), dates: [{ chance: 0.5, at: instant(8640000000) }] })(instant(8640000000)) // → 0.5
 */
export function chanceByDates({
  countedFrom,
  dates,
}: {
  readonly countedFrom: Instant
  readonly dates: readonly KeptDate[]
}): (moment: Instant) => number {
  const points: { logDays: number; score: number }[] = []
  for (const { chance, at } of dates) {
    if (at === null) break
    const logDays = Math.log(Math.max(NEAREST_DAYS, daysBetween(countedFrom, at)))
    const score = normalQuantile(chance)
    // Of dates that fall together the likeliest counts.
    const last = points.at(-1)
    if (last && logDays <= last.logDays) last.score = score
    else points.push({ logDays, score })
  }
  const [first] = points
  if (!first) return () => 0
  return (moment) => {
    const logDays = Math.log(Math.max(NEAREST_DAYS, daysBetween(countedFrom, moment)))
    // All of its dates are over: it is used up.
    if (points.length === 1 && first.logDays <= Math.log(NEAREST_DAYS)) return 1
    const following = points.findIndex((point, index) => index > 0 && point.logDays >= logDays)
    const end = following === -1 ? points.length - 1 : following
    const to = points[end] ?? first
    const from = points[end - 1]
    const slope = from === undefined ? 1 / USUAL_DEVIATION : (to.score - from.score) / (to.logDays - from.logDays)
    return Math.min(1, Math.max(0, normalDistribution(to.score + slope * (logDays - to.logDays))))
  }
}
