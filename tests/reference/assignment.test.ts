import { readFileSync } from 'node:fs'
import path from 'node:path'
import { assign } from '@glandkeeper/engines/schedule/assignment/assign'
import { AssignmentBuilder } from '@glandkeeper/engines/schedule/assignment/problem'
import { assessPlacement } from '@glandkeeper/engines/schedule/repack-plan/assess'
import type { RepackPlanInput } from '@glandkeeper/engines/schedule/repack-plan/input'
import { planRepacks } from '@glandkeeper/engines/schedule/repack-plan/plan'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loadSolver } from '../../apps/server/src/platform/highs-solver.ts'

/**
 * Generalised assignment, five instances of five agents and fifteen jobs, file gap1 of the OR-Library: J. E. Beasley,
 * "OR-Library: distributing test problems by electronic mail", Journal of the Operational Research Society 41 (1990),
 * pp. 1069-1072. The largest profits are the optima published with it; the least costs of the same tables were solved
 * exactly by another program.
 */
const instances = [
  { most: 336, least: 261 },
  { most: 327, least: 269 },
  { most: 339, least: 256 },
  { most: 341, least: 274 },
  { most: 326, least: 251 },
].map((optima, index) => ({ name: `gap1-${index + 1}`, index, ...optima }))

interface Gap {
  /** By agent, by job. */
  readonly worth: readonly (readonly number[])[]
  readonly needs: readonly (readonly number[])[]
  readonly capacities: readonly number[]
}

function instancesIn(file: string): readonly Gap[] {
  const numbers = readFileSync(path.join(import.meta.dirname, 'values', file), 'utf8')
    .trim()
    .split(/\s+/)
    .map(Number)
  let at = 0
  const next = () => numbers[at++]!
  const row = (length: number) => Array.from({ length }, next)
  return Array.from({ length: next() }, () => {
    const [agents, jobs] = [next(), next()]
    const table = () => Array.from({ length: agents }, () => row(jobs))
    return { worth: table(), needs: table(), capacities: row(agents) }
  })
}

function problemOf({ worth, needs, capacities }: Gap, sign: 1 | -1) {
  const builder = new AssignmentBuilder(capacities)
  for (const job of worth[0]!.keys()) {
    builder.item(`job ${job + 1}`)
    for (const [agent, values] of worth.entries()) {
      builder.choice(sign * values[job]!)
      builder.use(agent, needs[agent]![job]!)
    }
  }
  const built = builder.build()
  if (!built.ok) throw new Error(built.problem.detail)
  return built.problem
}

const solve = await loadSolver((line) => {
  throw new Error(line)
})
const withSolver = { solve, seconds: 60, relativeGap: 0 }
const all = instancesIn('gap1.txt')

it('the file is read whole', () => {
  expect(all.map(({ worth, capacities }) => [worth.length, worth[0]?.length, capacities.length])).toEqual(
    instances.map(() => [5, 15, 5]),
  )
})

describe.each(instances)('$name', ({ index, most, least }) => {
  const instance = all[index]!

  it.each([
    ['most', -1, -most],
    ['least', 1, least],
  ] as const)('is solved to the %s there is, and proven', (_, sign, optimum) => {
    const found = assign(problemOf(instance, sign), withSolver)
    expect(found.notPlaced).toEqual([])
    expect(found.cost).toBe(optimum)
    expect(found.bound).toBeGreaterThan(optimum - 1 + 1e-6)
    expect(found.bound).toBeLessThanOrEqual(optimum)
    for (const [agent, capacity] of instance.capacities.entries()) {
      const used = instance.needs[agent]!.reduce((sum, need, job) => (found.taken[job] === agent ? sum + need : sum), 0)
      expect(used).toBeLessThanOrEqual(capacity)
    }
  })

  it.each([-1, 1] as const)('has a bound without a solver that no assignment is below, times %i', (sign) => {
    const found = assign(problemOf(instance, sign), { solve: null, seconds: 0, relativeGap: 0 })
    const optimum = sign < 0 ? -most : least
    expect(found.bound).toBeLessThanOrEqual(optimum + 1e-9)
    expect(found.bound).toBeGreaterThan(optimum - 0.03 * Math.abs(optimum))
  })
})

const someGap = fc
  .record({ agents: fc.integer({ min: 1, max: 4 }), jobs: fc.integer({ min: 1, max: 6 }) })
  .chain(({ agents, jobs }) => {
    const table = fc.array(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: jobs, maxLength: jobs }), {
      minLength: agents,
      maxLength: agents,
    })
    return fc.record({
      worth: table,
      needs: table,
      capacities: fc.array(fc.integer({ min: 5, max: 40 }), { minLength: agents, maxLength: agents }),
    })
  })

/** The least cost of all ways to give the jobs to agents; Infinity when none fits. */
function leastByTrying({ worth, needs, capacities }: Gap, job = 0, used: readonly number[] = capacities.map(() => 0)): number {
  if (job === worth[0]!.length) return 0
  const costs = capacities.map((capacity, agent) => {
    const now = used[agent]! + needs[agent]![job]!
    return now > capacity
      ? Infinity
      : worth[agent]![job]! + leastByTrying({ worth, needs, capacities }, job + 1, used.with(agent, now))
  })
  return Math.min(...costs)
}

it('small assignments come out as by trying everything', () => {
  fc.assert(
    fc.property(someGap, (gap) => {
      const least = leastByTrying(gap)
      const found = assign(problemOf(gap, 1), withSolver)
      expect(found.notPlaced.length === 0).toBe(least < Infinity)
      if (least === Infinity) return
      expect(found.cost).toBe(least)
      expect(found.bound).toBeCloseTo(least, 5)
    }),
    { numRuns: 150 },
  )
}, 60_000)

const somePlan = fc.record({
  hours: fc.array(fc.constantFrom(3, 5, 8), { minLength: 3, maxLength: 3 }),
  cord: fc.nat(5),
  boundaries: fc.array(
    fc.record({
      hours: fc.constantFrom(1, 2, 3.5, 4),
      isolatesOnLine: fc.boolean(),
      amount: fc.nat(3),
      costs: fc.array(fc.nat(20), { minLength: 4, maxLength: 4 }),
    }),
    { maxLength: 5 },
  ),
})

function inputOf({ hours, cord, boundaries }: typeof somePlan extends fc.Arbitrary<infer Plan> ? Plan : never): RepackPlanInput {
  const cost = (total: number) => ({ chance: total, leaks: 0, waste: 0, total })
  return {
    slots: hours.map((fitting, slot) => ({
      id: `slot ${slot}`,
      isOutage: slot === 2,
      day: 14 * slot,
      hours: { fitting, scaffolding: 0, isolating: 3 },
    })),
    boundaries: boundaries.map(({ hours: fitting, isolatesOnLine, amount, costs: [waiting = 0, ...costs] }, index) => ({
      id: `boundary ${index}`,
      isolatesOnLine,
      hours: { fitting, scaffolding: 0, isolating: 1 },
      uses: [{ itemId: 'cord', amount }],
      costs: costs.map(cost),
      deferCost: cost(5 + waiting),
      pin: null,
      excluded: [],
      closedSlots: [],
    })),
    stockLimits: [
      { itemId: 'cord', beforeDay: 1, amount: cord / 2 },
      { itemId: 'cord', beforeDay: 20, amount: cord },
    ],
  }
}

/** The least a placement that breaks nothing costs. */
function leastPlan(input: RepackPlanInput, placement: readonly (string | null)[] = []): number {
  if (placement.length < input.boundaries.length)
    return Math.min(...[null, ...input.slots.map(({ id }) => id)].map((slotId) => leastPlan(input, [...placement, slotId])))
  const assessed = assessPlacement(input, new Map(input.boundaries.map(({ id }, at) => [id, placement[at] ?? null])))
  if (!assessed.ok) throw new Error(assessed.problem.detail)
  const breaks = [...assessed.cannotBe, ...assessed.overHours, ...assessed.stockShort]
  return breaks.length > 0 ? Infinity : assessed.cost.total
}

it('small plans of repacks come out as by trying everything', () => {
  fc.assert(
    fc.property(somePlan, (some) => {
      const input = inputOf(some)
      const plan = planRepacks(input, withSolver)
      if (!plan.ok) throw new Error(plan.problem.detail)
      const least = leastPlan(input)
      expect(plan.cost).toBeCloseTo(least, 6)
      expect(plan.bound).toBeCloseTo(least, 5)
    }),
    { numRuns: 60 },
  )
}, 60_000)
