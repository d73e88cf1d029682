import type { Beat } from './beats.ts'
import { BeatFill, type FillWatch, servesAll, type WindowTable, windowTable } from './fill.ts'
import type { PlanRules } from './input.ts'
import { cheapestOpenWeeks } from './open-weeks.ts'
import { costOfWeeks, priceOfHour } from './week-cost.ts'

/** How far weeks are moved at a time. */
const SHIFTS = [-1, 1, -2, 2, -3, 3]
const NEARLY_NOTHING = 1e-9
const WORK_OF_REFUSAL = 10

/** The open weeks of one crew's beats, and the search for better ones. */
export class CrewSearch {
  readonly open: Uint8Array[]
  /** Fills made so far, counted in windows and weeks: the measure of work, since a clock would make plans differ. */
  work = 0
  readonly #beats: readonly Beat[]
  readonly #tables: readonly WindowTable[]
  readonly #rules: PlanRules
  readonly #hours: Float64Array
  readonly #filler: BeatFill
  readonly #load: Float64Array[]
  /** Set-up and moves of each beat. */
  readonly #own: Float64Array
  #total: Float64Array
  #levelling: number
  /** The crew's hours as they would be: of the change that is being weighed. */
  #tried: Float64Array
  #triedOwn = 0
  #triedLevelling = 0

  constructor(beats: readonly Beat[], rules: PlanRules, hours: readonly number[]) {
    const weeks = hours.length
    this.#beats = beats
    this.#tables = beats.map(windowTable)
    this.#rules = rules
    this.#hours = Float64Array.from(hours)
    this.#filler = new BeatFill(hours)
    this.#total = new Float64Array(weeks)
    this.#tried = new Float64Array(weeks)
    this.open = beats.map(() => new Uint8Array(weeks))
    this.#load = beats.map(() => new Float64Array(weeks))
    this.#own = new Float64Array(beats.length)
    for (const { fixed } of beats) for (const { visit, week } of fixed) this.#total[week] = (this.#total[week] ?? 0) + visit.hours
    this.#levelling = costOfWeeks(this.#total, this.#hours, rules)
  }

  /** Set-up, levelling and moves of the whole crew. */
  get cost(): number {
    return this.#own.reduce((sum, own) => sum + own, this.#levelling)
  }

  /** Opens a beat for the first time: where the plan before had it, or by price. */
  begin(index: number): void {
    const before = openBefore(this.#beats[index] as Beat)
    const isServing = before !== null && servesAll(this.#tables[index] as WindowTable, before)
    this.#set(index, isServing ? before : this.#byPrice(index))
  }

  /** Opens a beat anew, and drops, shifts and adds open weeks of it, while that makes the crew's plan cheaper. */
  improve(index: number): boolean {
    const isCheaper = (open: Uint8Array) => this.change(index, open, -NEARLY_NOTHING)
    let gains = isCheaper(this.#byPrice(index))
    while (changeWeeks(this.#beats[index] as Beat, (this.open[index] as Uint8Array).slice(), isCheaper)) gains = true
    return gains
  }

  /** Opens a beat in other weeks, unless the crew's plan then costs more than by so much. */
  change(index: number, open: Uint8Array, mostRise: number): boolean {
    const rise = this.#weigh(index, open)
    if (!(rise <= mostRise)) return false
    this.#take(index, open)
    return true
  }

  /** Fills a beat once more in its open weeks, on top of what the others have become, for whom wants to see how. */
  refill(index: number, watch?: FillWatch): void {
    this.#set(index, this.open[index] as Uint8Array, watch)
  }

  /** Everything the search has, to come back to. */
  keep(): KeptSearch {
    return {
      open: this.open.map((open) => open.slice()),
      load: this.#load.map((load) => load.slice()),
      own: this.#own.slice(),
      total: this.#total.slice(),
      levelling: this.#levelling,
    }
  }

  restore({ open, load, own, total, levelling }: KeptSearch): void {
    for (let index = 0; index < this.open.length; index += 1) {
      this.open[index]?.set(open[index] as Uint8Array)
      this.#load[index]?.set(load[index] as Float64Array)
    }
    this.#own.set(own)
    this.#total.set(total)
    this.#levelling = levelling
  }

  #byPrice(index: number): Uint8Array {
    const beat = this.#beats[index] as Beat
    const load = this.#load[index] as Float64Array
    this.work += beat.classes.length
    // As if its hours came into a third of the weeks, which is about how seldom an area opens.
    const spread = (beat.hours / this.#hours.length) * 3
    const prices = this.#total.map((all, week) =>
      priceOfHour(all - (load[week] as number) + spread, this.#hours[week] as number, this.#rules),
    )
    return cheapestOpenWeeks(beat, prices)
  }

  #set(index: number, open: Uint8Array, watch?: FillWatch): void {
    if (this.#weigh(index, open, watch) === Infinity)
      throw new Error(`beat ${this.#beats[index]?.area.id} was opened in weeks that miss a window`)
    this.#take(index, open)
  }

  /** What the crew's plan would cost more with a beat open in these weeks. */
  #weigh(index: number, open: Uint8Array, watch?: FillWatch): number {
    const beat = this.#beats[index] as Beat
    const load = this.#load[index] as Float64Array
    const total = this.#total
    const tried = this.#tried
    const table = this.#tables[index] as WindowTable
    if (!servesAll(table, open)) {
      this.work += WORK_OF_REFUSAL
      return Infinity
    }
    this.work += beat.classes.length + tried.length
    let weeksOpen = 0
    for (let week = 0; week < tried.length; week += 1) {
      tried[week] = (total[week] as number) - (load[week] as number)
      if (!open[week] && !beat.isFixedOpen[week]) continue
      tried[week] = (tried[week] as number) + beat.area.setUpHours
      weeksOpen += 1
    }
    const movedHours = this.#filler.fill(table, open, tried, watch)
    this.#triedOwn = weeksOpen * beat.area.setUpHours + this.#rules.movePrice * movedHours
    this.#triedLevelling = costOfWeeks(tried, this.#hours, this.#rules)
    return this.#triedOwn + this.#triedLevelling - (this.#own[index] as number) - this.#levelling
  }

  /** Makes what was weighed last the plan. */
  #take(index: number, open: Uint8Array): void {
    const load = this.#load[index] as Float64Array
    const total = this.#total
    const tried = this.#tried
    for (let week = 0; week < load.length; week += 1)
      load[week] = (load[week] as number) + (tried[week] as number) - (total[week] as number)
    this.#total = tried
    this.#tried = total
    this.#levelling = this.#triedLevelling
    this.#own[index] = this.#triedOwn
    this.open[index]?.set(open)
  }
}

interface KeptSearch {
  readonly open: readonly Uint8Array[]
  readonly load: readonly Float64Array[]
  readonly own: Float64Array
  readonly total: Float64Array
  readonly levelling: number
}

/** Tries every week dropped, shifted or added, and leaves what is cheaper; says whether anything was. */
function changeWeeks({ allowed, isFixedOpen }: Beat, open: Uint8Array, isCheaper: (open: Uint8Array) => boolean): boolean {
  let gains = false
  for (let week = 0; week < open.length; week += 1) {
    if (!allowed[week] || (open[week] && isFixedOpen[week])) continue
    const was = open[week] as number
    open[week] = 1 - was
    if (isCheaper(open)) {
      gains = true
      continue
    }
    open[week] = was
    if (!was) continue
    for (const shift of SHIFTS) {
      const to = week + shift
      if (to < 0 || to >= open.length || open[to] || !allowed[to]) continue
      open[week] = 0
      open[to] = 1
      if (isCheaper(open)) {
        gains = true
        break
      }
      open[week] = 1
      open[to] = 0
    }
  }
  return gains
}

/** The weeks of the plan before; null where it had none. */
function openBefore({ classes, allowed, isFixedOpen }: Beat): Uint8Array | null {
  const open = new Uint8Array(allowed.length)
  for (let week = 0; week < open.length; week += 1) if (isFixedOpen[week] && allowed[week]) open[week] = 1
  let hasBefore = false
  for (const { before } of classes)
    if (before !== null && allowed[before]) {
      open[before] = 1
      hasBefore = true
    }
  return hasBefore ? open : null
}
