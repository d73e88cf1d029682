import type { Beat } from './beats.ts'
import type { Placed } from './whole-visits.ts'

/** Hours of a crew by week as whole visits make them: visits, and the set-up of each area that is open. */
export class CrewLoad {
  readonly visitHours: Float64Array
  readonly setUpHours: Float64Array
  readonly #beats: readonly Beat[]
  /** Visits of each beat by week: the first opens the area. */
  readonly #counts: Int32Array[]

  constructor(beats: readonly Beat[], weeks: number, placed: Iterable<Placed> = []) {
    this.#beats = beats
    this.visitHours = new Float64Array(weeks)
    this.setUpHours = new Float64Array(weeks)
    this.#counts = beats.map(() => new Int32Array(weeks))
    for (const { beat, week, visit } of placed) this.add(beat, week, visit.hours)
  }

  add(beat: number, week: number, hours: number): void {
    const counts = this.#counts[beat] as Int32Array
    if (counts[week] === 0) this.setUpHours[week] = (this.setUpHours[week] ?? 0) + this.#setUp(beat)
    counts[week] = (counts[week] ?? 0) + 1
    this.visitHours[week] = (this.visitHours[week] ?? 0) + hours
  }

  remove(beat: number, week: number, hours: number): void {
    const counts = this.#counts[beat] as Int32Array
    counts[week] = (counts[week] ?? 0) - 1
    if (counts[week] === 0) this.setUpHours[week] = (this.setUpHours[week] ?? 0) - this.#setUp(beat)
    this.visitHours[week] = (this.visitHours[week] ?? 0) - hours
  }

  of(week: number): number {
    return (this.visitHours[week] ?? 0) + (this.setUpHours[week] ?? 0)
  }

  visitsOf(beat: number, week: number): number {
    return this.#counts[beat]?.[week] ?? 0
  }

  /** Hours the week would have more with this visit: its own, and the set-up where the area is not open yet. */
  more(beat: number, week: number, hours: number): number {
    return hours + (this.visitsOf(beat, week) === 0 ? this.#setUp(beat) : 0)
  }

  #setUp(beat: number): number {
    return this.#beats[beat]?.area.setUpHours ?? 0
  }
}
