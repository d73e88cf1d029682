import type { Beat } from './beats.ts'
import type { DueVisit } from './input.ts'
import type { CrewSearch } from './search.ts'

/** One visit in its week, before it is said why. */
export interface Placed {
  readonly visit: DueVisit
  readonly beat: number
  week: number
  readonly isFixed: boolean
}

/** Cuts the hours of alike windows into whole visits, in the order given, so that neighbours in the walk stay together. */
export function wholeVisits(beats: readonly Beat[], search: CrewSearch): Placed[] {
  const placed: Placed[] = []
  for (const [index, beat] of beats.entries()) {
    const place = (visit: DueVisit, week: number, isFixed = false) => placed.push({ visit, beat: index, week, isFixed })
    for (const { visit, week } of beat.fixed) place(visit, week, true)
    const stays = new Set<number>()
    const poured = new Map<string, Map<number, number>>()
    search.refill(index, {
      onStay: (at) => stays.add(at),
      onPour: (first, last, week, hours) => {
        const key = `${first} ${last}`
        const share = poured.get(key) ?? new Map<number, number>()
        poured.set(key, share.set(week, hours))
      },
    })
    const alike = new Map<string, DueVisit[]>()
    for (const [at, { visits, before, ...window }] of beat.classes.entries()) {
      if (stays.has(at)) for (const visit of visits) place(visit, before as number)
      else {
        const key = openWithin(search.open[index] as Uint8Array, window)
        alike.set(key, [...(alike.get(key) ?? []), ...visits])
      }
    }
    for (const [key, visits] of alike)
      for (const [visit, week] of cut(visits, poured.get(key) as Map<number, number>)) place(visit, week)
  }
  return placed
}

/** First and last open week of a window. */
function openWithin(open: Uint8Array, { earliest, latest }: { earliest: number; latest: number }): string {
  let first = earliest
  let last = latest
  while (!open[first]) first += 1
  while (!open[last]) last -= 1
  return `${first} ${last}`
}

function cut(visits: readonly DueVisit[], share: ReadonlyMap<number, number>): [DueVisit, number][] {
  const weeks = [...share].toSorted(([one], [other]) => one - other)
  const inOrder = visits.toSorted((one, other) => one.due - other.due)
  let at = 0
  let until = weeks[0]?.[1] ?? 0
  let done = 0
  return inOrder.map((visit) => {
    // By its middle: a visit belongs to the week that holds the larger part of it.
    while (at < weeks.length - 1 && done + visit.hours / 2 > until + 1e-9) {
      at += 1
      until += weeks[at]?.[1] ?? 0
    }
    done += visit.hours
    return [visit, weeks[at]?.[0] ?? 0]
  })
}
