import type { Beat, Impossible } from './beats.ts'
import { CrewLoad } from './load.ts'
import type { Placed } from './whole-visits.ts'

const ROUNDING = 1e-6

interface Limited {
  readonly placed: readonly Placed[]
  readonly impossible: readonly Impossible[]
}

/**
 * Takes visits out of weeks beyond the most a crew may work: to another week of their window that has room, otherwise
 * out of the plan, what weighs least first. What is frozen stays, since its round is made.
 */
export function withinLimit(
  beats: readonly Beat[],
  placed: readonly Placed[],
  hours: readonly number[],
  mostShare: number,
): Limited {
  if (mostShare === Infinity) return { placed, impossible: [] }
  const weeks = new LimitedWeeks(beats, placed, hours, mostShare)
  for (let week = 0; week < hours.length; week += 1) weeks.relieve(week)
  return weeks.comeBack()
}

/** Weeks that hold no more than the limit, and what found no place in them. */
class LimitedWeeks {
  readonly #beats: readonly Beat[]
  readonly #placed: readonly Placed[]
  readonly #hours: readonly number[]
  readonly #mostShare: number
  readonly #load: CrewLoad
  readonly #byWeek: Set<Placed>[]
  readonly #out: Placed[] = []

  constructor(beats: readonly Beat[], placed: readonly Placed[], hours: readonly number[], mostShare: number) {
    this.#beats = beats
    this.#placed = placed
    this.#hours = hours
    this.#mostShare = mostShare
    this.#load = new CrewLoad(beats, hours.length, placed)
    this.#byWeek = hours.map(() => new Set())
    for (const visit of placed) this.#byWeek[visit.week]?.add(visit)
  }

  /** Moves or takes out what is too much in a week. */
  relieve(week: number): void {
    if (this.#room(week) >= 0) return
    for (const visit of leastFirst([...(this.#byWeek[week] ?? [])].filter((one) => !one.visit.frozen))) {
      if (this.#room(week) >= 0) return
      const to = this.#roomiest(visit)
      this.#takeOut(visit)
      if (to === null) this.#out.push(visit)
      else this.#putIn(visit, to)
    }
  }

  /** What left one week may fit into another by now, or weigh more than what is there: what weighs most chooses first. */
  comeBack(): Limited {
    const gone: Placed[] = []
    const waiting = leastFirst(this.#out)
    for (let visit = waiting.pop(); visit; visit = waiting.pop()) {
      const to = this.#roomiest(visit)
      if (to !== null) this.#putIn(visit, to)
      else {
        const lighter = this.#displaced(visit)
        gone.push(lighter ?? visit)
      }
    }
    const left = new Set(gone)
    return {
      placed: this.#placed.filter((visit) => !left.has(visit)),
      impossible: gone.map(({ visit, isFixed }) => ({
        visitId: visit.id,
        reason: isFixed ? 'pinned week is full' : 'hours run short',
      })),
    }
  }

  /** Takes the place of a visit that weighs less, in a week of its window. @returns that one, or null */
  #displaced(visit: Placed): Placed | null {
    for (const week of this.#weeksOf(visit)) {
      const needs = this.#load.more(visit.beat, week, visit.visit.hours)
      const [lightest] = leastFirst([...(this.#byWeek[week] ?? [])].filter((one) => !one.isFixed))
      if (!lightest || lightest.visit.weight >= visit.visit.weight) continue
      if (this.#room(week) + lightest.visit.hours < needs) continue
      this.#takeOut(lightest)
      this.#putIn(visit, week)
      return lightest
    }
    return null
  }

  /** The week of its window with most room for it, one where its area is open before one where it would be opened. */
  #roomiest(visit: Placed): number | null {
    let best: number | null = null
    let most = -Infinity
    for (const week of this.#weeksOf(visit)) {
      const needs = this.#load.more(visit.beat, week, visit.visit.hours)
      const room = this.#room(week)
      if (room < needs) continue
      const value = room - (needs > visit.visit.hours ? OPENING : 0)
      if (value > most) {
        most = value
        best = week
      }
    }
    return best
  }

  #weeksOf({ visit, beat, isFixed }: Placed): number[] {
    if (isFixed) return []
    const allowed = this.#beats[beat]?.allowed ?? []
    const first = Math.max(0, visit.earliest)
    const last = Math.min(visit.latest, this.#hours.length - 1)
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index).filter((week) => allowed[week])
  }

  #room(week: number): number {
    return this.#mostShare * (this.#hours[week] ?? 0) + ROUNDING - this.#load.of(week)
  }

  #takeOut(visit: Placed): void {
    this.#load.remove(visit.beat, visit.week, visit.visit.hours)
    this.#byWeek[visit.week]?.delete(visit)
  }

  #putIn(visit: Placed, week: number): void {
    visit.week = week
    this.#load.add(visit.beat, week, visit.visit.hours)
    this.#byWeek[week]?.add(visit)
  }
}

/** More than any room: opening an area is the last resort. */
const OPENING = 1e6

/** A visit set by hand goes last of all. */
function leastFirst(visits: readonly Placed[]): Placed[] {
  return visits.toSorted(
    (one, other) =>
      Number(one.isFixed) - Number(other.isFixed) ||
      one.visit.weight - other.visit.weight ||
      (one.visit.id < other.visit.id ? -1 : 1),
  )
}
