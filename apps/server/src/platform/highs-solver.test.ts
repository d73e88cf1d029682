import type { MilpModel } from '@glandkeeper/engines/schedule/assignment/milp'
import { describe, expect, it } from 'vitest'
import { loadSolver, solverOn } from './highs-solver.ts'

/** Two things, one place of each in two rows; both may not have the first place. */
const model: MilpModel = {
  cost: Float64Array.of(1, 5, 2, 4),
  rowLower: Float64Array.of(1, 1, -Infinity),
  rowUpper: Float64Array.of(1, 1, 1),
  rowStart: Int32Array.of(0, 2, 4, 6),
  column: Int32Array.of(0, 1, 2, 3, 0, 2),
  value: Float64Array.of(1, 1, 1, 1, 1, 1),
}
const limits = { seconds: 5, relativeGap: 0, start: null }

describe('the solver', () => {
  it('finds the cheapest answer and proves it: 1 + 4', async () => {
    const solve = await loadSolver()
    const answer = solve(model, limits)
    expect([answer?.objective, answer?.bound, answer && [...answer.values].map(Math.round)]).toEqual([5, 5, [1, 0, 0, 1]])
  })

  it('starts from an answer it is given, and gives at least that when there is no time for more', async () => {
    const solve = await loadSolver()
    const answer = solve(hard(), {
      seconds: 0.001,
      relativeGap: 0,
      start: Float64Array.from(hard().cost, (_, column) => column % 2),
    })
    expect(answer && answer.objective <= 40 * 50).toBe(true)
    expect(answer && answer.bound <= answer.objective).toBe(true)
  })

  it('gives none where there is none', async () => {
    const solve = await loadSolver()
    expect(solve({ ...model, rowUpper: Float64Array.of(1, 1, -1) }, limits)).toBeNull()
  })

  it('gives none and a short line of why where it fails, and solves on after that', async () => {
    const faults: string[] = []
    const solve = await loadSolver((line) => faults.push(line))
    expect(solve({ ...model, cost: Float64Array.of(NaN, 5, 2, 4) }, limits)).toBeNull()
    expect([faults.length, (faults[0] ?? '').length > 5, (faults[0] ?? '').length <= 200]).toEqual([1, true, true])
    expect(solve(model, limits)?.objective).toBe(5)
  })

  it('clears every model away, also one it fails with: their memory is nobody else’s to free', () => {
    const runtime = countedRuntime()
    const solve = solverOn(runtime, () => undefined)
    expect(solve(model, limits)).toBeNull()
    expect(solve(model, limits)).toBeNull()
    expect([runtime.made, runtime.cleared]).toEqual([2, 2])
  })
})

/** Counts models; runs none. */
function countedRuntime() {
  const counted = {
    made: 0,
    cleared: 0,
    constants: { variableType: { integer: 1 } },
    createModel: () => {
      counted.made += 1
      return {
        options: { set: () => undefined },
        run: () => {
          throw new Error('out of memory')
        },
        dispose: () => (counted.cleared += 1),
      }
    },
  }
  return counted as unknown as typeof counted & Parameters<typeof solverOn>[0]
}

/** Fifty things that each wait for 40, or share one place that holds few of them. */
function hard(): MilpModel {
  const things = 50
  const rows = Array.from({ length: things }, (_, thing) => thing)
  return {
    cost: Float64Array.from({ length: 2 * things }, (_, column) => (column % 2 ? 40 : column % 13)),
    rowLower: Float64Array.from([...rows.map(() => 1), -Infinity]),
    rowUpper: Float64Array.from([...rows.map(() => 1), 97.5]),
    rowStart: Int32Array.from([...rows.map((row) => 2 * row), 2 * things, 3 * things]),
    column: Int32Array.from([...Array.from({ length: 2 * things }, (_, column) => column), ...rows.map((row) => 2 * row)]),
    value: Float64Array.from([...Array.from({ length: 2 * things }, () => 1), ...rows.map((row) => 7 + ((row * 11) % 17))]),
  }
}
