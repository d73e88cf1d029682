import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chanceOverDates, sumOfCosts, valveSlotCost } from './slot-cost.ts'

const before = { chanceOut: 0.2, expectedLeaks: 0.4, lifeUsed: 0.75 }
const weights = { costOfRunningOut: 5000, costOfLeak: 300, costOfRepack: 200, criticality: 3 }

describe('the cost of one valve in one slot', () => {
  it('is 0.2 × 5000 × 3 = 3000 by chance, 0.4 × 300 × 3 = 360 by leaks, 0.25 × 200 = 50 by waste: 3410', () => {
    expect(valveSlotCost(before, weights)).toEqual({ ok: true, chance: 3000, leaks: 360, waste: 50, total: 3410 })
  })

  it('wastes nothing of a packing that has lasted longer than was to be expected', () => {
    expect(valveSlotCost({ ...before, lifeUsed: 1.4 }, weights)).toMatchObject({ waste: 0 })
  })

  it.each([
    ['a chance above 1', { chanceOut: 1.01 }, {}, 'slot-cost/chance'],
    ['a chance that is none', { chanceOut: NaN }, {}, 'slot-cost/chance'],
    ['leaks below 0', { expectedLeaks: -1 }, {}, 'slot-cost/leaks'],
    ['a life that is none', { lifeUsed: NaN }, {}, 'slot-cost/life'],
    ['a life without end', { lifeUsed: Infinity }, {}, 'slot-cost/life'],
    ['a cost below 0', {}, { costOfLeak: -1 }, 'slot-cost/weights'],
    ['a criticality that is none', {}, { criticality: NaN }, 'slot-cost/weights'],
  ])('is refused by name for %s', (_, wrongBefore, wrongWeights, code) => {
    const cost = valveSlotCost({ ...before, ...wrongBefore }, { ...weights, ...wrongWeights })
    expect(cost.ok ? 'a cost' : cost.problem.code).toBe(code)
  })

  it('is added up part by part', () => {
    const parts = { chance: 1, leaks: 2, waste: 4, total: 7 }
    expect(sumOfCosts([parts, parts])).toEqual({ chance: 2, leaks: 4, waste: 8, total: 14 })
    expect(sumOfCosts([])).toEqual({ chance: 0, leaks: 0, waste: 0, total: 0 })
  })
})

const chanceOf = (...[chanceBefore, days]: Parameters<typeof chanceOverDates>) => {
  const over = chanceOverDates(chanceBefore, days)
  if (!over.ok) throw new Error(over.problem.detail)
  return over.chance
}

/** n-th moment of the standard triangle with its top at c: 2 ((1 - c^(n+1)) / (1 - c)) / ((n + 1)(n + 2)). */
const moment = (n: number, top: number) => (2 * (1 - top ** (n + 1))) / (1 - top) / ((n + 1) * (n + 2))

describe('a chance over an uncertain date', () => {
  it('is, for a chance that rises evenly, the chance at the mean (earliest + likely + latest) / 3', () => {
    const days = fc.tuple(fc.nat(400), fc.nat(400), fc.nat(400)).map((three) => three.toSorted((one, other) => one - other))
    fc.assert(
      fc.property(days, ([earliest = 0, likely = 0, latest = 0]) => {
        const expected = (earliest + likely + latest) / 3 / 500
        expect(chanceOf((day) => day / 500, { earliest, likely, latest })).toBeCloseTo(expected, 12)
      }),
    )
  })

  it.each([
    [1, 0.3],
    [2, 0.3],
    [5, 0.7],
    [14, 0.1],
    [14, 0.5],
  ])('is the moment of the distribution for a chance that rises with day^%i, top at %f', (power, likely) => {
    expect(chanceOf((day) => day ** power, { earliest: 0, likely, latest: 1 })).toBeCloseTo(moment(power, likely), 13)
  })

  it('is within 0.05 of a sharp step, which no smooth rule takes exactly', () => {
    // Triangle 0, 50, 100: half of it lies before day 50, and 1/8 before day 25.
    expect(chanceOf((day) => (day >= 50 ? 1 : 0), { earliest: 0, likely: 50, latest: 100 })).toBeCloseTo(0.5, 12)
    expect(chanceOf((day) => (day >= 25 ? 1 : 0), { earliest: 0, likely: 50, latest: 100 })).toBeCloseTo(7 / 8, 1)
  })

  it('is the plain chance where the date is certain', () => {
    expect(chanceOf((day) => day / 100, { earliest: 40, likely: 40, latest: 40 })).toBe(0.4)
  })

  it('holds where the likely day is the first or the last', () => {
    expect(chanceOf((day) => day / 90, { earliest: 0, likely: 0, latest: 90 })).toBeCloseTo(1 / 3, 12)
    expect(chanceOf((day) => day / 90, { earliest: 0, likely: 90, latest: 90 })).toBeCloseTo(2 / 3, 12)
  })

  it.each([
    ['days in another order', { earliest: 30, likely: 20, latest: 60 }, () => 0.5, 'repacks/days'],
    ['a day that is none', { earliest: NaN, likely: 20, latest: 60 }, () => 0.5, 'repacks/days'],
    ['a chance that is none', { earliest: 10, likely: 20, latest: 60 }, () => NaN, 'repacks/chance'],
    ['a chance above 1', { earliest: 20, likely: 20, latest: 20 }, () => 2, 'repacks/chance'],
  ])('is refused by name for %s', (_, days, chance, code) => {
    const over = chanceOverDates(chance, days)
    expect(over.ok ? 'a chance' : over.problem.code).toBe(code)
  })
})
