import type { MilpModel } from './milp.ts'
import { NONE, type Places } from './places.ts'
import type { AssignmentProblem } from './problem.ts'

/**
 * Some choices of a problem as a model of a solver, all choices of an item one behind another: one column for each. Items
 * without a choice among them stay as they are, and `room` is what those leave of each resource.
 */
export function modelOf(problem: AssignmentProblem, kept: Int32Array, room: Float64Array): MilpModel {
  const { firstUse, resource, amount, cost } = problem
  const items = itemsOf(problem, kept)
  const rowOfResource = new Map<number, number>()
  const rows = new Rows()
  const upper: number[] = []
  let last = NONE
  for (const [column, item] of items.entries()) {
    if (item !== last) upper.push(1)
    last = item
    rows.add(upper.length - 1, column, 1)
  }
  const choices = upper.length
  for (const [column, choice] of kept.entries()) {
    for (let use = firstUse[choice] as number; use < (firstUse[choice + 1] as number); use += 1) {
      const which = resource[use] as number
      const row = rowOfResource.get(which) ?? upper.push(Math.max(0, room[which] as number)) - 1
      rowOfResource.set(which, row)
      rows.add(row, column, amount[use] as number)
    }
  }
  return {
    cost: Float64Array.from(kept, (choice) => cost[choice] as number),
    rowLower: Float64Array.from(upper, (_, row) => (row < choices ? 1 : -Infinity)),
    rowUpper: Float64Array.from(upper),
    ...rows.behindOneAnother(),
  }
}

/** Of each choice, the item it belongs to; choices stand in their order. */
export function itemsOf({ firstChoice }: AssignmentProblem, choices: Int32Array): Int32Array {
  let item = 0
  return choices.map((choice) => {
    while (choice >= (firstChoice[item + 1] as number)) item += 1
    return item
  })
}

/** Of these items, in their order, the choices that lose least, so many in all; also what each takes now, and what uses nothing. */
export function leastLosing(
  { problem, taken }: Places,
  losses: Float64Array,
  items: readonly number[],
  count: number,
): Int32Array {
  const { firstChoice, firstUse } = problem
  const own = items.flatMap((item) =>
    Array.from(
      { length: (firstChoice[item + 1] as number) - (firstChoice[item] as number) },
      (_, at) => (firstChoice[item] as number) + at,
    ),
  )
  const sorted = Float64Array.from(own, (choice) => losses[choice] as number).toSorted()
  const most = sorted[Math.min(count, sorted.length - 1)] ?? Infinity
  const now = new Set(items.map((item) => taken[item]))
  return Int32Array.from(
    own.filter((choice) => (losses[choice] as number) <= most || now.has(choice) || firstUse[choice] === firstUse[choice + 1]),
  )
}

/** Of these choices, those that a cheaper assignment can take: with any other, the bound is beyond the cost that is known. */
export function choicesWithin(choices: Int32Array, losses: Float64Array, bound: number, knownCost: number): Int32Array {
  const most = knownCost - bound + OFF_BY * Math.max(1, Math.abs(knownCost))
  return choices.filter((choice) => (losses[choice] as number) <= most)
}

const OFF_BY = 1e-9

/** Rows that are filled column by column. */
class Rows {
  readonly #columns: number[][] = []
  readonly #values: number[][] = []

  add(row: number, column: number, value: number): void {
    ;(this.#columns[row] ??= []).push(column)
    ;(this.#values[row] ??= []).push(value)
  }

  behindOneAnother(): Pick<MilpModel, 'rowStart' | 'column' | 'value'> {
    const rowStart = new Int32Array(this.#columns.length + 1)
    for (const [row, columns] of this.#columns.entries()) rowStart[row + 1] = (rowStart[row] as number) + columns.length
    return { rowStart, column: Int32Array.from(this.#columns.flat()), value: Float64Array.from(this.#values.flat()) }
  }
}
