import { type Outcome, refuse } from '../../outcome.ts'

/**
 * Items of which each takes exactly one of its choices. A choice costs something and uses amounts of resources, and all
 * choices taken together use no more of a resource than there is. Rows stand one behind another: the choices of item `i`
 * are `firstChoice[i]` up to `firstChoice[i + 1]`, the uses of choice `c` are `firstUse[c]` up to `firstUse[c + 1]`.
 */
export interface AssignmentProblem {
  /** By item. */
  readonly names: readonly string[]
  readonly firstChoice: Int32Array
  /** By choice; in any unit, also below 0. */
  readonly cost: Float64Array
  readonly firstUse: Int32Array
  /** By use: which resource, and how much of it. */
  readonly resource: Int32Array
  readonly amount: Float64Array
  /** By resource. */
  readonly capacities: Float64Array
}

/** Takes a problem down item by item, choice by choice. */
export class AssignmentBuilder {
  readonly #capacities: Float64Array
  readonly #names: string[] = []
  readonly #firstChoice: number[] = []
  readonly #cost: number[] = []
  readonly #firstUse: number[] = []
  readonly #resource: number[] = []
  readonly #amount: number[] = []
  #fault: { field: string; detail: string } | null = null

  constructor(capacities: Iterable<number>) {
    this.#capacities = Float64Array.from(capacities)
    const wrong = this.#capacities.findIndex((capacity) => !isAmount(capacity))
    if (wrong >= 0) this.#refuse('capacities', `resource ${wrong} has ${this.#capacities[wrong]}, not an amount of 0 or more`)
  }

  /** The next item: choices after this are its choices. */
  item(name: string): void {
    this.#names.push(name)
    this.#firstChoice.push(this.#cost.length)
  }

  /** The next choice of the item: uses after this are its uses. */
  choice(cost: number): void {
    if (!Number.isFinite(cost)) this.#refuse(this.#names.at(-1) ?? 'choice', `a choice costs a number, not ${cost}`)
    if (this.#names.length === 0) this.#refuse('choice', 'a choice belongs to an item')
    this.#cost.push(cost)
    this.#firstUse.push(this.#resource.length)
  }

  /** An amount the choice uses; of the same resource twice it is added up. */
  use(resource: number, amount: number): void {
    const name = this.#names.at(-1) ?? 'use'
    if (!Number.isInteger(resource) || !(resource >= 0 && resource < this.#capacities.length))
      this.#refuse(name, `there is no resource ${resource}`)
    if (!isAmount(amount)) this.#refuse(name, `a choice uses an amount of 0 or more, not ${amount}`)
    if (this.#cost.length === 0) this.#refuse(name, 'a use belongs to a choice')
    if (!(amount > 0)) return
    const before = this.#resource.indexOf(resource, this.#firstUse.at(-1))
    if (before >= 0) this.#amount[before] = (this.#amount[before] ?? 0) + amount
    else {
      this.#resource.push(resource)
      this.#amount.push(amount)
    }
  }

  /**
   * @returns the problem, or `assignment/input` with the first thing that was wrong
   * @example new AssignmentBuilder([NaN]).build().ok // → false
   */
  build(): Outcome<{ readonly problem: AssignmentProblem }> {
    const firstChoice = Int32Array.from([...this.#firstChoice, this.#cost.length])
    const empty = this.#names.findIndex((_, item) => firstChoice[item] === firstChoice[item + 1])
    if (empty >= 0) this.#refuse(this.#names[empty] ?? '', 'an item has at least one choice')
    if (this.#fault) return refuse('assignment/input', this.#fault.field, this.#fault.detail)
    return {
      ok: true,
      problem: {
        names: this.#names,
        firstChoice,
        cost: Float64Array.from(this.#cost),
        firstUse: Int32Array.from([...this.#firstUse, this.#resource.length]),
        resource: Int32Array.from(this.#resource),
        amount: Float64Array.from(this.#amount),
        capacities: this.#capacities,
      },
    }
  }

  #refuse(field: string, detail: string): void {
    this.#fault ??= { field, detail }
  }
}

const isAmount = (value: number) => value >= 0 && value < Infinity
