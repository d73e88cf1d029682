import { addDays, type Day, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import { firstNotPositive, type InputProblem, type Outcome, refuse } from '../outcome.ts'
import { exactShareLimits } from '../stats/binomial.ts'

/** Days after an outage that anybody would call after it, with much to spare. */
const MOST_DAYS = 36_525

interface Window {
  readonly from: Instant
  readonly to: Instant
}

/**
 * How many leaks opened in the days after an outage.
 *
 *     share = leaks opened from an outage's end until `days` later / all leaks
 *
 * Each leak counts once, however many outages it follows. The day on which the window ends is no part of it. Whether a share is
 * more than chance, `timeAfterOutages` tells: leaks without a liking for outages fall there as often as time does.
 *
 * @source SRC-794 leaks after an outage · SRC-310 exact limits of a share, 95 % (docs/sources.md)
 * @returns share and limits from 0 to 1, null where there is no leak; or `number/not-positive`, `number/out-of-range`
 * @example leaksAfterOutage({ leaks: [{ openedAt: instant(0) }], outageEnds: [instant(0)], days: days(7) }) // → { ok: true, within: 1, all: 1, share: 1, lower: 0.025, upper: 1 }
 */
export function leaksAfterOutage(input: {
  readonly leaks: readonly { readonly openedAt: Instant }[]
  readonly outageEnds: readonly Instant[]
  readonly days: Day
}): Outcome<{
  readonly within: number
  readonly all: number
  readonly share: number | null
  readonly lower: number | null
  readonly upper: number | null
}> {
  const { leaks, outageEnds, days } = input
  const refused = refusedDays(days)
  if (refused) return refused
  const windows = windowsAfter(outageEnds, days)
  const within = leaks.filter(({ openedAt }) => liesIn(windows, openedAt)).length
  const all = leaks.length
  const limits = exactShareLimits({ found: within, lookedAt: all, confidence: 0.95 })
  if (!limits.ok) return { ok: true, within, all, share: null, lower: null, upper: null }
  const { share, lower, upper } = limits
  return { ok: true, within, all, share, lower, upper }
}

/**
 * The share of a time that lies in the days after an outage; days after two outages count once.
 *
 * @source SRC-794 leaks after an outage (docs/sources.md)
 * @returns from 0 to 1; or `number/not-positive`, `number/out-of-range`, `leak/no-time`
 * @example timeAfterOutages({ outageEnds: [instant(0)], days: days(7), from: instant(0), to: addDays(instant(0), days(28)) }) // → { ok: true, share: 0.25 }
 */
export function timeAfterOutages(input: {
  readonly outageEnds: readonly Instant[]
  readonly days: Day
  readonly from: Instant
  readonly to: Instant
}): Outcome<{ readonly share: number }> {
  const { outageEnds, days, from, to } = input
  const refused = refusedDays(days)
  if (refused) return refused
  if (!(to > from)) return refuse('leak/no-time', 'to', 'the time must end after it begins')
  const after = windowsAfter(outageEnds, days).reduce((sum, window) => {
    const begins = window.from > from ? window.from : from
    const ends = window.to < to ? window.to : to
    return ends > begins ? sum + daysBetween(begins, ends) : sum
  }, 0)
  // Summed by pieces, a time all covered may come out a bit over the whole.
  return { ok: true, share: Math.min(1, after / daysBetween(from, to)) }
}

function refusedDays(days: Day): { ok: false; problem: InputProblem } | null {
  const refused = firstNotPositive({ days })
  if (refused || days <= MOST_DAYS) return refused
  return refuse('number/out-of-range', 'days', `a hundred years after an outage at most, not ${days} days`)
}

/** In order, and none over another. */
function windowsAfter(outageEnds: readonly Instant[], days: Day): Window[] {
  const windows: Window[] = []
  for (const from of outageEnds.toSorted((one, other) => one - other)) {
    const to = addDays(from, days)
    const last = windows.at(-1)
    if (last && from <= last.to) windows[windows.length - 1] = { from: last.from, to }
    else windows.push({ from, to })
  }
  return windows
}

/** The last window that has begun by then is the only one that may hold it. */
function liesIn(windows: readonly Window[], at: Instant): boolean {
  let [low, high] = [0, windows.length]
  while (low < high) {
    const middle = (low + high) >> 1
    const window = windows[middle]
    if (window && window.from <= at) low = middle + 1
    else high = middle
  }
  const begun = windows[low - 1]
  return begun !== undefined && at < begun.to
}
