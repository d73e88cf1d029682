import type { Beat } from './beats.ts'

/** Windows of a beat side by side: the search goes over them millions of times. */
export interface WindowTable {
  readonly earliest: Int32Array
  readonly latest: Int32Array
  /** -1 where the plan before had none. */
  readonly before: Int32Array
  readonly hours: Float64Array
  /** By week: the earliest end of a window that begins in it or later, beyond the plan where there is none. */
  readonly endsFrom: Int32Array
}

export function windowTable({ classes, allowed }: Beat): WindowTable {
  const weeks = allowed.length
  const endsFrom = new Int32Array(weeks + 1).fill(weeks)
  for (const { earliest, latest } of classes) endsFrom[earliest] = Math.min(endsFrom[earliest] as number, latest)
  for (let week = weeks - 1; week >= 0; week -= 1)
    endsFrom[week] = Math.min(endsFrom[week] as number, endsFrom[week + 1] as number)
  return {
    endsFrom,
    earliest: Int32Array.from(classes, ({ earliest }) => earliest),
    latest: Int32Array.from(classes, ({ latest }) => latest),
    before: Int32Array.from(classes, ({ before }) => before ?? -1),
    hours: Float64Array.from(classes, ({ hours }) => hours),
  }
}

/** Whether every window holds an open week: none lies between two open weeks in a row. */
export function servesAll({ endsFrom }: WindowTable, open: Uint8Array): boolean {
  let from = 0
  for (let week = 0; week < open.length; week += 1) {
    if (!open[week]) continue
    if ((endsFrom[from] as number) < week) return false
    from = week + 1
  }
  return endsFrom[from] === open.length
}

/** What a fill did, for whom wants more than its loads. */
export interface FillWatch {
  readonly onStay: (index: number) => void
  /** Hours of all windows whose open weeks reach from the first to the last of these. */
  readonly onPour: (first: number, last: number, week: number, hours: number) => void
}

/**
 * Spreads the hours of a beat over its open weeks on top of what the crew does elsewhere. Windows that hold the same
 * open weeks are alike and are poured as one, those with least choice first, to one level: the share of the crew's
 * hours. Visits stay in the week of the plan before while that week keeps within the crew's hours.
 */
export class BeatFill {
  readonly #hours: Float64Array
  readonly #openWeeks: Int32Array
  /** How many weeks are open before each week. */
  readonly #openBefore: Int32Array
  /** Hours by number of further choices and first choice. */
  readonly #alike: Float64Array
  /** First choices from and to which there are hours, by number of further choices. */
  readonly #from: Int32Array
  readonly #to: Int32Array

  constructor(hours: readonly number[]) {
    this.#hours = Float64Array.from(hours)
    this.#openWeeks = new Int32Array(hours.length)
    this.#openBefore = new Int32Array(hours.length + 1)
    this.#alike = new Float64Array(hours.length * hours.length)
    this.#from = new Int32Array(hours.length).fill(hours.length)
    this.#to = new Int32Array(hours.length).fill(-1)
  }

  /**
   * @param load what the crew does elsewhere, with the set-up of the beat; gets the hours of its windows on top
   * @param open serves all windows
   * @returns hours that left the week of the plan before
   */
  fill(table: WindowTable, open: Uint8Array, load: Float64Array, watch?: FillWatch): number {
    const weeks = open.length
    const alike = this.#alike
    const from = this.#from
    const to = this.#to
    const openBefore = this.#openBefore
    const { earliest, latest, before: weekBefore, hours: hoursOf } = table
    let count = 0
    for (let week = 0; week < weeks; week += 1) {
      openBefore[week] = count
      if (open[week]) this.#openWeeks[count++] = week
    }
    openBefore[weeks] = count
    let movedHours = 0
    let mostChoices = 0
    for (let index = 0; index < hoursOf.length; index += 1) {
      const before = weekBefore[index] as number
      const hours = hoursOf[index] as number
      if (before >= 0) {
        if (open[before] && (load[before] as number) + hours <= (this.#hours[before] as number)) {
          load[before] = (load[before] as number) + hours
          watch?.onStay(index)
          continue
        }
        movedHours += hours
      }
      const first = openBefore[earliest[index] as number] as number
      const choices = (openBefore[(latest[index] as number) + 1] as number) - 1 - first
      if (choices > mostChoices) mostChoices = choices
      if (first < (from[choices] as number)) from[choices] = first
      if (first > (to[choices] as number)) to[choices] = first
      alike[choices * weeks + first] = (alike[choices * weeks + first] as number) + hours
    }
    for (let choices = 0; choices <= mostChoices; choices += 1) {
      const last = to[choices] as number
      let first = from[choices] as number
      from[choices] = weeks
      to[choices] = -1
      for (; first <= last; first += 1) {
        const hours = alike[choices * weeks + first] as number
        if (hours === 0) continue
        alike[choices * weeks + first] = 0
        this.#pour(first, first + choices, hours, load, watch)
      }
    }
    return movedHours
  }

  /** Raises the emptiest of some open weeks to one level, as water would. */
  #pour(first: number, last: number, hours: number, load: Float64Array, watch?: FillWatch): void {
    const openWeeks = this.#openWeeks
    const own = this.#hours
    if (first === last) {
      const week = openWeeks[first] as number
      load[week] = (load[week] as number) + hours
      watch?.onPour(week, week, week, hours)
      return
    }
    let level = Infinity
    for (;;) {
      // Weeks above the level take nothing, which lowers it for the others.
      let sum = hours
      let room = 0
      for (let at = first; at <= last; at += 1) {
        const week = openWeeks[at] as number
        const there = load[week] as number
        const most = own[week] as number
        if (there >= level * most) continue
        sum += there
        room += most
      }
      if (sum / room >= level) break
      level = sum / room
    }
    for (let at = first; at <= last; at += 1) {
      const week = openWeeks[at] as number
      const more = level * (own[week] as number) - (load[week] as number)
      if (more <= 0) continue
      load[week] = (load[week] as number) + more
      watch?.onPour(openWeeks[first] as number, openWeeks[last] as number, week, more)
    }
  }
}
