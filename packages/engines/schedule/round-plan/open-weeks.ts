import type { Beat } from './beats.ts'

/**
 * The cheapest weeks in which to open a beat so that each window holds one of them, by dynamic programming over the
 * week that was opened last.
 *
 *     f(w) = set-up × (1 + price of w) + price of w × hours due to begin in (u, w] + least f(u)
 *
 * over all u such that no window lies strictly between u and w. The hours are put to the first open week after their
 * window begins, which is near enough to choose weeks by; `BeatFill` spreads them.
 */
export function cheapestOpenWeeks({ area, allowed, isFixedOpen, classes }: Beat, prices: Float64Array): Uint8Array {
  const weeks = prices.length
  const open = new Uint8Array(weeks)
  for (let week = 0; week < weeks; week += 1) if (isFixedOpen[week] && allowed[week]) open[week] = 1
  if (classes.length === 0) return open
  const { endsBefore, hoursUpTo } = windowsByStart(classes, weeks)
  const cost = new Float64Array(weeks).fill(Infinity)
  const openedBefore = new Int32Array(weeks).fill(-1)
  for (let week = 0; week < weeks; week += 1) {
    if (!allowed[week]) continue
    const price = prices[week] ?? 0
    const own = open[week] ? 0 : area.setUpHours * (1 + price)
    for (let last = -1; last < week; last += 1) {
      const until = last < 0 ? 0 : (cost[last] ?? Infinity)
      if (until === Infinity || (endsBefore[last + 1] ?? Infinity) < week) continue
      const all = until + own + price * ((hoursUpTo[week + 1] ?? 0) - (hoursUpTo[last + 1] ?? 0))
      if (all < (cost[week] ?? Infinity)) {
        cost[week] = all
        openedBefore[week] = last
      }
    }
  }
  let at = -1
  for (let week = 0; week < weeks; week += 1) {
    const isEnd = (endsBefore[week + 1] ?? Infinity) === Infinity
    if (isEnd && (cost[week] ?? Infinity) < (at < 0 ? Infinity : (cost[at] ?? Infinity))) at = week
  }
  for (; at >= 0; at = openedBefore[at] ?? -1) open[at] = 1
  return open
}

/** By week: the earliest end of a window that begins in it or later, and the hours that may begin before it. */
function windowsByStart(classes: Beat['classes'], weeks: number) {
  const endsBefore = new Float64Array(weeks + 2).fill(Infinity)
  const hoursUpTo = new Float64Array(weeks + 2)
  for (const { earliest, latest, hours } of classes) {
    endsBefore[earliest] = Math.min(endsBefore[earliest] ?? Infinity, latest)
    hoursUpTo[earliest + 1] = (hoursUpTo[earliest + 1] ?? 0) + hours
  }
  for (let week = weeks - 1; week >= 0; week -= 1)
    endsBefore[week] = Math.min(endsBefore[week] ?? Infinity, endsBefore[week + 1] ?? Infinity)
  for (let week = 1; week <= weeks + 1; week += 1) hoursUpTo[week] = (hoursUpTo[week] ?? 0) + (hoursUpTo[week - 1] ?? 0)
  return { endsBefore, hoursUpTo }
}
