import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assign, type SearchLimits } from './assign.ts'
import type { MilpModel, SolveMilp } from './milp.ts'
import { AssignmentBuilder, type AssignmentProblem } from './problem.ts'

interface Choice {
  readonly cost: number
  readonly uses: readonly (readonly [resource: number, amount: number])[]
}
type Items = readonly (readonly Choice[])[]

function problemOf(capacities: readonly number[], items: Items): AssignmentProblem {
  const builder = new AssignmentBuilder(capacities)
  for (const [item, choices] of items.entries()) {
    builder.item(`item ${item}`)
    for (const { cost, uses } of choices) {
      builder.choice(cost)
      for (const [resource, amount] of uses) builder.use(resource, amount)
    }
  }
  const built = builder.build()
  if (!built.ok) throw new Error(built.problem.detail)
  return built.problem
}

/** The least cost of all assignments there are; Infinity when there is none. */
function leastCost(capacities: readonly number[], items: Items, from = 0): number {
  const choices = items[from]
  if (!choices) return 0
  let least = Infinity
  for (const { cost, uses } of choices) {
    const left = [...capacities]
    for (const [resource, amount] of uses) left[resource] = left[resource]! - amount
    if (left.every((room) => room >= -1e-9)) least = Math.min(least, cost + leastCost(left, items, from + 1))
  }
  return least
}

/** Solves a small model by trying everything. Rows of choice come first. */
const byTrying: SolveMilp = (model) => {
  const [rows, values] = [rowsOf(model), new Float64Array(model.cost.length)]
  let best: { objective: number; values: Float64Array } | null = null
  const tryRow = (row: number, objective: number) => {
    const { columns, upper } = rows[row] ?? { columns: [], upper: Infinity }
    if (model.rowLower[row] !== 1 || upper !== 1) {
      const holds = rows.every(
        (each) => each.columns.reduce((sum, [column, value]) => sum + value * values[column]!, 0) <= each.upper + 1e-9,
      )
      if (holds && (best === null || objective < best.objective)) best = { objective, values: values.slice() }
      return
    }
    for (const [column] of columns) {
      values[column] = 1
      tryRow(row + 1, objective + model.cost[column]!)
      values[column] = 0
    }
  }
  tryRow(0, 0)
  const found = best as { objective: number; values: Float64Array } | null
  return found && { ...found, bound: found.objective }
}

function rowsOf({ rowStart, rowUpper, column, value }: MilpModel) {
  return Array.from(rowUpper, (upper, row) => ({
    upper,
    columns: Array.from(
      { length: rowStart[row + 1]! - rowStart[row]! },
      (_, at) => [column[rowStart[row]! + at]!, value[rowStart[row]! + at]!] as const,
    ),
  }))
}

const alone: SearchLimits = { solve: null, seconds: 0, relativeGap: 0 }
const withSolver: SearchLimits = { solve: byTrying, seconds: 1, relativeGap: 0 }

describe('an assignment worked by hand', () => {
  // One place of 4: A saves 6 there with 4, B and C save 4 each with 2. Greedy lets A in, B and C together are better.
  const place = (cost: number, amount: number): readonly Choice[] => [
    { cost: 10, uses: [] },
    { cost, uses: [[0, amount]] },
  ]
  const items = [place(4, 4), place(6, 2), place(6, 2)]

  it('costs 10 + 6 + 6 = 22, and no other less', () => {
    const found = assign(problemOf([4], items), withSolver)
    expect([[...found.taken], found.cost, found.bound]).toEqual([[0, 1, 1], 22, 22])
  })

  it('is found without a solver too', () => {
    expect(assign(problemOf([4], items), alone).cost).toBe(22)
  })

  it('costs less than greedy, which lets in first who loses most for the room: 1 + 10 + 10 against 10 + 4.5 + 4.5', () => {
    const found = assign(problemOf([4], [place(4.5, 2), place(4.5, 2), place(1, 3)]), withSolver)
    expect([found.cost, found.greedyCost]).toEqual([19, 21])
  })

  it('names what fits nowhere, and still places the rest', () => {
    const found = assign(problemOf([4], [[{ cost: 1, uses: [[0, 5]] }], [{ cost: 2, uses: [[0, 3]] }]]), withSolver)
    expect([found.notPlaced, [...found.taken], found.cost]).toEqual([['item 0'], [-1, 0], 2])
  })

  it('lets an item make room by going elsewhere', () => {
    const tight = [
      [
        { cost: 1, uses: [[0, 1]] as const },
        { cost: 2, uses: [[1, 1]] as const },
      ],
      [{ cost: 1, uses: [[0, 1]] as const }],
    ]
    const found = assign(problemOf([1, 1], tight), alone)
    expect([found.cost, found.notPlaced]).toEqual([3, []])
  })
})

const someItems = fc.array(
  fc.array(
    fc.record({
      cost: fc.integer({ min: -5, max: 20 }),
      uses: fc.array(fc.tuple(fc.nat(2), fc.constantFrom(0.5, 1, 2, 3.3, Math.PI)), { maxLength: 3 }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
  { maxLength: 6 },
)
const someCapacities = fc.array(fc.constantFrom(0, 1, 2.7, 4, 6, 9), { minLength: 3, maxLength: 3 })

/** Every item has one of its choices or is named, and nothing is used beyond what there is. */
function expectKept(capacities: readonly number[], items: Items, { taken, cost, notPlaced }: ReturnType<typeof assign>) {
  const used = capacities.map(() => 0)
  let sum = 0
  for (const [item, choice] of taken.entries()) {
    if (choice < 0) continue
    const { cost: own, uses } = items[item]![choice]!
    sum += own
    for (const [resource, amount] of uses) used[resource] = used[resource]! + amount
  }
  for (const [resource, amount] of used.entries()) expect(amount).toBeLessThanOrEqual(capacities[resource]! + 1e-6)
  expect(cost).toBeCloseTo(sum, 9)
  expect(notPlaced).toEqual([...taken.entries()].filter(([, choice]) => choice < 0).map(([item]) => `item ${item}`))
}

describe('every assignment', () => {
  it('keeps to the capacities, and its bound is below the least cost there is', () => {
    fc.assert(
      fc.property(someCapacities, someItems, (capacities, items) => {
        const found = assign(problemOf(capacities, items), alone)
        expectKept(capacities, items, found)
        const least = leastCost(capacities, items)
        expect(found.bound).toBeLessThanOrEqual(least + 1e-9)
        if (found.notPlaced.length === 0) expect(found.cost).toBeGreaterThanOrEqual(least - 1e-9)
        if (found.greedyCost < Infinity) expect(found.greedyCost).toBeGreaterThanOrEqual(found.cost)
      }),
      { numRuns: 200 },
    )
  })

  it('is the cheapest of all, and proven to be, where the solver tries everything', () => {
    fc.assert(
      fc.property(someCapacities, someItems, (capacities, items) => {
        const least = leastCost(capacities, items)
        const found = assign(problemOf(capacities, items), withSolver)
        expectKept(capacities, items, found)
        expect(found.notPlaced.length === 0).toBe(least < Infinity)
        if (least === Infinity) return
        expect(found.cost).toBeCloseTo(least, 9)
        expect(found.bound).toBeCloseTo(least, 9)
      }),
      { numRuns: 200 },
    )
  })
})

/** Many items that want the same early places. */
function large(items = 60, places = 12): { capacities: readonly number[]; items: Items } {
  return {
    capacities: Array.from({ length: places }, (_, place) => 6 + (place % 5)),
    items: Array.from({ length: items }, (_item, item) => [
      { cost: 40 + (item % 7), uses: [] },
      ...Array.from({ length: places }, (_, place) => ({
        cost: 1 + ((item * 7 + place * 3) % 11) + place / 2,
        uses: [[place, 2 + ((item * 5) % 4)] as const],
      })),
    ]),
  }
}

describe('the search', () => {
  const { capacities, items } = large()
  const problem = problemOf(capacities, items)

  it('gives the same for the same', () => expect(assign(problem, alone)).toEqual(assign(problem, alone)))

  it('asks no solver where the bound is near enough, or there is no time', () => {
    const never: SolveMilp = () => {
      throw new Error('asked')
    }
    expect(assign(problem, { solve: never, seconds: 10, relativeGap: 0.5 }).notPlaced).toEqual([])
    expect(assign(problem, { solve: never, seconds: 0, relativeGap: 0 }).notPlaced).toEqual([])
  })

  it('says how far it is, and ends with a whole assignment and a bound when it is told to stop', () => {
    const shares: number[] = []
    let asked = 0
    const found = assign(problem, withSolver, { onProgress: (share) => shares.push(share), shouldStop: () => (asked += 1) > 3 })
    expectKept(capacities, items, found)
    expect([found.isCutShort, found.notPlaced.length, Number.isFinite(found.bound)]).toEqual([true, 0, true])
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(shares.at(-1)).toBe(1)
    expect(assign(problem, alone).isCutShort).toBe(false)
  })
})
