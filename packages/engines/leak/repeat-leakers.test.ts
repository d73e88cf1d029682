import { type Instant, instant } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { meanCumulativeFunction } from '../stats/mean-cumulative-function.ts'
import { repeatLeakers, type WatchedValve } from './repeat-leakers.ts'

const at = (day: number) => instant(day * 86_400_000)
const valve = (id: string, from: number, to: number, ...ages: number[]): WatchedValve => ({
  id,
  watchedFrom: at(from),
  watchedTo: at(to),
  openedAt: ages.map((age) => at(from + age)),
})
const found = (valves: readonly WatchedValve[], confidence = 0.95) => {
  const result = repeatLeakers({ valves, confidence })
  if (!result.ok) throw new Error(result.problem.detail)
  return result
}
const dryOnes = (count: number, to = 100) => Array.from({ length: count }, (_, place) => valve(`dry ${place}`, 0, to))

describe('repeat leakers', () => {
  it('are counted by the age of their own watch, in whole days, ties kept', () => {
    const { steps } = found([valve('a', 0, 100, 10.2, 10.9), valve('b', 500, 580, 10), valve('c', 50, 60, 10)])
    expect(steps.map(({ age, atRisk, events }) => [age, atRisk, events])).toEqual([[10, 3, 4]])
  })

  it('a leak on the first day counts at 1 day, also in a watch that ended that day', () => {
    const { steps } = found([valve('a', 0, 0, 0), valve('b', 0, 9, 0.5), valve('c', 0, 9, 1.5)])
    expect(steps.map(({ age, atRisk, events }) => [age, atRisk, events])).toEqual([[1, 3, 3]])
  })

  it('are above the limit at the end of their own watch, the least likely first, then by name', () => {
    const { above } = found([
      ...dryOnes(40),
      valve('four', 0, 100, 10, 20, 30, 40),
      valve('b', 0, 90, 10, 20, 60),
      valve('a', 0, 90, 9, 20, 50),
    ])
    expect(above.map(({ id, leaks, age }) => [id, leaks, age])).toEqual([
      ['four', 4, 100],
      ['a', 3, 90],
      ['b', 3, 90],
    ])
    expect(above[0]?.expected).toBeCloseTo(10 / 43, 12)
  })

  it('are not those that leak as often as the mean, nor those that never did', () => {
    expect(found([valve('a', 0, 9, 5), valve('b', 0, 9, 6), valve('c', 0, 9, 7), valve('d', 0, 9)], 0.99).above).toEqual([])
    // Its watch ended before anybody leaked, so that nothing is known of it.
    expect(found([valve('short', 0, 3), ...dryOnes(20), valve('x', 0, 50, 9, 9, 9)]).above.map(({ id }) => id)).toEqual(['x'])
  })

  it('is looked at where the last limit is known when it alone is left', () => {
    const { steps, above } = found([...dryOnes(20, 50), valve('old', 0, 200, 10, 20, 30, 40, 90)])
    expect(steps.at(-1)).toMatchObject({ age: 90, atRisk: 1, upper: null })
    expect(above).toMatchObject([{ id: 'old', leaks: 4, age: 40 }])
  })

  it('show at most 200 steps, first and last among them, of as many as there are', () => {
    const daily = (count: number) =>
      found([valve('a', 0, 5000, ...Array.from({ length: count }, (_, day) => day + 1)), ...dryOnes(9, 5000)]).steps
    expect([daily(199).length, daily(200).length]).toEqual([199, 200])
    const steps = daily(4321)
    expect(steps).toHaveLength(200)
    expect([steps[0]?.age, steps.at(-1)?.age]).toEqual([1, 4321])
    expect(steps.at(-1)?.mean).toBeCloseTo(432.1, 9)
    expect(new Set(steps.map(({ age }) => age)).size).toBe(200)
  })

  it.each([
    [[], 0.95, 'repeat-events/no-unit', 'valves'],
    [[valve('a', 5, 4)], 0.95, 'repeat-events/not-an-age', 'valves'],
    [[{ ...valve('a', 0, 4), watchedFrom: NaN as Instant }], 0.95, 'repeat-events/not-an-age', 'valves'],
    [[{ ...valve('a', 0, 4), watchedTo: Infinity as Instant }], 0.95, 'repeat-events/not-an-age', 'valves'],
    [[valve('a', 5, 9, -0.5)], 0.95, 'repeat-events/outside-watch', 'valves'],
    [[valve('a', 5, 9, 4.5)], 0.95, 'repeat-events/outside-watch', 'valves'],
    [[{ ...valve('a', 0, 4), openedAt: [NaN as Instant] }], 0.95, 'repeat-events/outside-watch', 'valves'],
    [[valve('a', 0, 4)], 1, 'confidence/not-a-share', 'confidence'],
  ])('refuses %j at %d: %s', (valves, confidence, code, field) => {
    expect(repeatLeakers({ valves, confidence })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('of any plant: the curve is that of the engine of repeat events, and who is above has more than its limit', () => {
    const plant = fc.array(
      fc
        .record({ from: fc.nat(500), watched: fc.integer({ min: 1, max: 60 }), ages: fc.array(fc.integer({ min: 1, max: 60 })) })
        .map(({ from, watched, ages }) => ({ from, watched, ages: ages.filter((age) => age <= watched) })),
      { minLength: 1, maxLength: 25 },
    )
    fc.assert(
      fc.property(plant, (valves) => {
        const { steps, above } = found(
          valves.map(({ from, watched, ages }, place) => valve(`${place}`, from, from + watched, ...ages)),
        )
        const units = valves.map(({ watched, ages }) => ({ watchedTo: watched, events: ages }))
        const curve = meanCumulativeFunction({ units, confidence: 0.95, scale: 'log' })
        expect(curve.ok && curve.steps).toEqual(steps)
        for (const { id, leaks, upper, expected, chance, age } of above) {
          expect(leaks).toBeGreaterThan(upper)
          expect(leaks).toBe(units[Number(id)]?.events.filter((each) => each <= age).length)
          expect(expected).toBe(steps.findLast((step) => step.age <= age)?.mean)
          expect(chance > 0 && chance < 1).toBe(true)
        }
        expect(above.map(({ chance }) => chance)).toEqual(above.map(({ chance }) => chance).toSorted((one, other) => one - other))
      }),
    )
  })
})
