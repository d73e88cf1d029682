import type { Beat } from './beats.ts'
import { CrewLoad } from './load.ts'
import type { Placed } from './whole-visits.ts'

const ROUNDING = 1e-9

/**
 * Takes visits nearer to their due week where that costs nothing: first all visits of an area and week together, then
 * one by one to a week in which their area is open anyway. A week that is taken to stays easy. The search spreads hours
 * evenly, which is more than anybody asks for below that share.
 */
export function nearerDue(
  beats: readonly Beat[],
  placed: readonly Placed[],
  hours: readonly number[],
  easyShare: number,
): readonly Placed[] {
  const load = new CrewLoad(beats, hours.length, placed)
  const isEasyWith = (week: number, more: number) => load.of(week) + more <= easyShare * (hours[week] ?? 0) + ROUNDING
  const moveTo = (visit: Placed, week: number) => {
    load.remove(visit.beat, visit.week, visit.visit.hours)
    load.add(visit.beat, week, visit.visit.hours)
    visit.week = week
  }
  for (const block of blocksOf(placed)) {
    const { beat, week: from } = block[0] as Placed
    const setUp = beats[beat]?.area.setUpHours ?? 0
    const own = block.reduce((sum, { visit }) => sum + visit.hours, 0)
    const to = nearestWeek(
      block,
      beats[beat]?.allowed,
      (week) => load.visitsOf(beat, week) === 0 && isEasyWith(week, own + setUp),
    )
    if (to !== from) for (const visit of block) moveTo(visit, to)
  }
  const farthestFirst = placed
    .filter((visit) => mayMove(visit) && away(visit, visit.week) > 0)
    .toSorted((one, other) => away(other, other.week) - away(one, one.week) || (one.visit.id < other.visit.id ? -1 : 1))
  for (const visit of farthestFirst) {
    const isOpenAndEasy = (week: number) => load.visitsOf(visit.beat, week) > 0 && isEasyWith(week, visit.visit.hours)
    const to = nearestWeek([visit], beats[visit.beat]?.allowed, isOpenAndEasy)
    if (to !== visit.week) moveTo(visit, to)
  }
  return placed
}

/** Visits of a beat in one week, where all of them may move. */
function blocksOf(placed: readonly Placed[]): Placed[][] {
  const blocks = new Map<string, Placed[]>()
  for (const visit of placed) {
    const key = `${visit.beat} ${visit.week}`
    const block = blocks.get(key) ?? []
    block.push(visit)
    blocks.set(key, block)
  }
  return [...blocks.values()].filter((block) => block.every(mayMove))
}

/** Set by hand it stays, and so does what the plan before had there. */
function mayMove({ isFixed, visit, week }: Placed): boolean {
  return !isFixed && visit.before !== week
}

/** The week nearest to when they are due that all of them may be made in; the one they are in where none is nearer. */
function nearestWeek(block: readonly Placed[], allowed: Uint8Array | undefined, isFree: (week: number) => boolean): number {
  const at = (block[0] as Placed).week
  const first = Math.max(0, ...block.map(({ visit }) => visit.earliest))
  const last = Math.min((allowed?.length ?? 0) - 1, ...block.map(({ visit }) => visit.latest))
  const awayIn = (week: number) => block.reduce((sum, visit) => sum + away(visit, week), 0)
  let best = at
  let least = awayIn(at)
  for (let week = first; week <= last; week += 1) {
    if (week === at || !allowed?.[week] || awayIn(week) >= least || !isFree(week)) continue
    best = week
    least = awayIn(week)
  }
  return best
}

/** Weeks between a week and the week a visit is due. */
function away({ visit }: Placed, week: number): number {
  return Math.abs(week - Math.max(0, visit.due))
}
