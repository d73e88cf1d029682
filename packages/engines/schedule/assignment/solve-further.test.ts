import { describe, expect, it } from 'vitest'
import { BestKnown } from './best-known.ts'
import { greedyPlaces } from './greedy.ts'
import { choicesByCost } from './improve.ts'
import type { MilpLimits, MilpModel, SolveMilp } from './milp.ts'
import { AssignmentBuilder } from './problem.ts'
import { solveFurther } from './solve-further.ts'

/** Items that may wait for 40, or want one of some places early. */
function problemOf(items: number, places: number) {
  const builder = new AssignmentBuilder(Array.from({ length: places }, (_, place) => 6 + (place % 5)))
  for (let item = 0; item < items; item += 1) {
    builder.item(`item ${item}`)
    builder.choice(40)
    for (let place = 0; place < places; place += 1) {
      builder.choice(1 + ((item * 7 + place * 3) % 11) + place / 2)
      builder.use(place, 2 + ((item * 5) % 4))
    }
  }
  const built = builder.build()
  if (!built.ok) throw new Error(built.problem.detail)
  return built.problem
}

/** A solver that is asked with greedy's assignment known, and a bound of 0 that rules nothing out. */
function askedOver(items: number, places: number, answer: SolveMilp = () => null) {
  const problem = problemOf(items, places)
  const best = new BestKnown(problem)
  best.offer(greedyPlaces(problem, new Float64Array(places)))
  const greedyCost = best.cost
  const asked: { model: MilpModel; limits: MilpLimits }[] = []
  const solve: SolveMilp = (model, limits) => {
    asked.push({ model, limits })
    return answer(model, limits)
  }
  const bounds = [{ bound: 0, losses: problem.cost.map((cost) => cost - 1) }]
  const bound = solveFurther(best, bounds, {
    solve,
    seconds: 10,
    relativeGap: 0,
    sorted: choicesByCost(problem),
    isOver: () => false,
  })
  return { problem, best, greedyCost, bound, asked }
}

const itemsIn = ({ rowLower }: MilpModel) => rowLower.filter((lower) => lower === 1).length
const costOfStart = ({ model, limits }: { model: MilpModel; limits: MilpLimits }) =>
  [...(limits.start ?? [])].reduce((sum, value, column) => sum + value * (model.cost[column] ?? NaN), 0)

describe('the solver', () => {
  it('is given all choices of a small problem, and what is known to start from', () => {
    const { problem, greedyCost, asked } = askedOver(40, 20)
    expect(asked.map(({ model, limits }) => [model.cost.length, itemsIn(model), limits.seconds])).toEqual([
      [problem.cost.length, 40, 10],
    ])
    expect(asked.map(costOfStart)).toEqual([greedyCost])
  })

  it('proves a bound of a small problem, but never one above what is known', () => {
    const says = (bound: number) =>
      askedOver(40, 20, ({ cost }, { start }) => ({ objective: 0, bound, values: start ?? cost })).bound
    expect([says(17), says(1e9)]).toEqual([17, askedOver(40, 20).greedyCost])
  })

  it('is given a large problem kernel by kernel, each item in one, with choices that lose least and what others leave', () => {
    const { problem, best, greedyCost, asked } = askedOver(900, 30)
    expect(asked.map(({ model, limits }) => [itemsIn(model), limits.seconds])).toEqual([
      [300, 10 / 3],
      [300, 10 / 3],
      [300, 10 / 3],
    ])
    for (const { model } of asked) expect(model.cost.length).toBeLessThan(problem.cost.length / 5)
    expect(asked.map(costOfStart).reduce((sum, cost) => sum + cost, 0)).toBeCloseTo(greedyCost, 9)
    const left = [...best.places.room]
    for (const { model, limits } of asked) {
      for (const [row, upper] of model.rowUpper.entries()) {
        if (model.rowLower[row] === 1) continue
        let used = 0
        for (let at = model.rowStart[row]!; at < model.rowStart[row + 1]!; at += 1)
          used += model.value[at]! * limits.start![model.column[at]!]!
        expect(left.map((room) => Math.abs(upper - used - room)).toSorted((one, other) => one - other)[0]).toBeLessThan(1e-6)
      }
    }
  })

  it('proves nothing of the whole by what it says of a kernel', () => {
    const { bound } = askedOver(900, 30, ({ cost }, { start }) => ({ objective: 0, bound: 1e9, values: start ?? cost }))
    expect(bound).toBe(-Infinity)
  })

  it('is not followed where its answer does not fit', () => {
    const { best, greedyCost } = askedOver(40, 20, ({ cost }) => ({
      objective: 0,
      bound: -Infinity,
      values: cost.map((_, column) => (column % 21 === 1 ? 1 : 0)),
    }))
    expect(best.cost).toBe(greedyCost)
  })

  it('is followed where its answer is cheaper, and what then fits better is moved', () => {
    // Waiting for all, which costs more; then every item may shift to what has room.
    const { best, greedyCost } = askedOver(40, 20, ({ cost }) => ({
      objective: 0,
      bound: 0,
      values: cost.map((_, column) => (column % 21 === 0 ? 1 : 0)),
    }))
    expect([best.cost <= greedyCost, best.cost < 40 * 40, best.places.missing]).toEqual([true, true, 0])
  })
})
