import type { Beat, Impossible } from './beats.ts'
import { CrewLoad } from './load.ts'
import type { Placed } from './whole-visits.ts'

const ROUNDING = 1e-6

/**
 * Takes visits out of weeks beyond the most a crew may work: to another week of their window that has room, otherwise
 * out of the plan, what weighs least first. What is frozen stays, since its round is made.
 */
export function withinLimit(
  beats: readonly Beat[],
  placed: readonly Placed[],
  hours: readonly number[],
  mostShare: number,
): { readonly placed: readonly Placed[]; readonly impossible: readonly Impossible[] } {
  if (mostShare === Infinity) return { placed, impossible: [] }
  const load = new CrewLoad(beats, hours.length, placed)
  const room = (week: number) => mostShare * (hours[week] ?? 0) + ROUNDING - load.of(week)
  const left = new Set(placed)
  const out: Placed[] = []
  const move = (visit: Placed, to: number) => {
    load.remove(visit.beat, visit.week, visit.visit.hours)
    load.add(visit.beat, to, visit.visit.hours)
    visit.week = to
  }
  for (let week = 0; week < hours.length; week += 1) {
    if (room(week) >= 0) continue
    for (const visit of leastFirst(placed.filter((one) => one.week === week && !one.visit.frozen))) {
      if (room(week) >= 0) break
      const to = roomiest(beats, load, visit, room)
      if (to !== null) move(visit, to)
      else {
        load.remove(visit.beat, week, visit.visit.hours)
        left.delete(visit)
        out.push(visit)
      }
    }
  }
  const impossible: Impossible[] = []
  // What left one week may fit into another by now: what weighs most chooses first.
  for (const visit of leastFirst(out).toReversed()) {
    const to = roomiest(beats, load, visit, room)
    if (to === null) {
      impossible.push({ visitId: visit.visit.id, reason: visit.isFixed ? 'pinned week is full' : 'hours run short' })
      continue
    }
    load.add(visit.beat, to, visit.visit.hours)
    visit.week = to
    left.add(visit)
  }
  return { placed: placed.filter((visit) => left.has(visit)), impossible }
}

/** A visit set by hand goes last of all. */
function leastFirst(visits: readonly Placed[]): Placed[] {
  return visits.toSorted(
    (one, other) =>
      Number(one.isFixed) - Number(other.isFixed) ||
      one.visit.weight - other.visit.weight ||
      (one.visit.id < other.visit.id ? -1 : 1),
  )
}

/** The week of its window with most room for it, one where its area is open before one where it would be opened. */
function roomiest(
  beats: readonly Beat[],
  load: CrewLoad,
  { visit, beat, week: at, isFixed }: Placed,
  room: (week: number) => number,
): number | null {
  if (isFixed) return null
  const last = Math.min(visit.latest, (beats[beat]?.allowed.length ?? 0) - 1)
  let best: number | null = null
  let most = -Infinity
  for (let week = Math.max(0, visit.earliest); week <= last; week += 1) {
    if (week === at || !beats[beat]?.allowed[week]) continue
    const needs = load.more(beat, week, visit.hours)
    if (room(week) < needs) continue
    const value = room(week) - (needs - visit.hours) * 1000
    if (value > most) {
      most = value
      best = week
    }
  }
  return best
}
