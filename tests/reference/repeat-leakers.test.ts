import { readFileSync } from 'node:fs'
import path from 'node:path'
import { repeatLeakers, type WatchedValve } from '@glandkeeper/engines/leak/repeat-leakers'
import type { WatchedUnit } from '@glandkeeper/engines/stats/repeat-events'
import { instant } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

const DAY = 86_400_000

/** Watched from a day of its own on: only ages may count. */
const valve = (id: string, watchedTo: number, events: readonly number[], from: number): WatchedValve => ({
  id,
  watchedFrom: instant(from * DAY),
  watchedTo: instant((from + watchedTo) * DAY),
  openedAt: events.map((age) => instant((from + age) * DAY)),
})

/** The sum the incomplete gamma function stands for: 1 less the chances of 0 … count - 1. */
function chanceOfOrMore(count: number, mean: number): number {
  let [below, term] = [0, Math.exp(-mean)]
  for (let n = 0; n < count; n++) {
    below += term
    term *= mean / (n + 1)
  }
  return 1 - below
}

function found(valves: readonly WatchedValve[], confidence: number) {
  const result = repeatLeakers({ valves, confidence })
  if (!result.ok) throw new Error(result.problem.detail)
  return result
}

describe('four valves watched 100, 80, 50 and 30 days, worked by hand', () => {
  // A leaks twice on day 10 and on day 40, B on day 40 too, C never, D on day 20.
  const valves = [valve('A', 100, [10, 10, 40], 700), valve('B', 80, [40], 0), valve('C', 50, [], 33), valve('D', 30, [20], 9000)]
  const { steps } = found(valves, 0.5)

  it('day 10: 2 leaks of 4 valves, mean 2/4; day 20: 1 of 4, 3/4; day 40: D is gone, 2 of 3, 3/4 + 2/3 = 17/12', () => {
    expect(steps.map(({ age, atRisk, events }) => [age, atRisk, events])).toEqual([
      [10, 4, 2],
      [20, 4, 1],
      [40, 3, 2],
    ])
    expect(steps.map(({ mean }) => mean)).toEqual([1 / 2, 3 / 4, 17 / 12].map((mean) => expect.closeTo(mean, 14)))
  })

  it("Nelson's variance 1/4, 11/48, 73/144", () => {
    // Day 10, counts 2 0 0 0 about 1/2: squares 9/4 + 3/4 = 3, over 3 and over 4 valves: 1/4.
    // Day 20, counts so far 2 0 0 1 about 3/4: squares 25/16 + 2 · 9/16 + 1/16 = 11/4, over 3 and over 4: 11/48.
    // Day 40, counts that day 1 1 0 of A B C about 2/3: squares 2 · 1/9 + 4/9 = 2/3, over 2 and over 3: 1/9;
    //   with the counts before over those watched then, A 2/4, B 0, C 0: twice (1 - 2/3) · 1/2, over 2: 1/6.
    //   11/48 + 1/9 + 1/6 = 33/144 + 16/144 + 24/144 = 73/144.
    const variances = steps.map(({ standardError }) => (standardError ?? NaN) ** 2)
    expect(variances).toEqual([1 / 4, 11 / 48, 73 / 144].map((variance) => expect.closeTo(variance, 14)))
  })

  it('half of the limits reach up to 1.98834: A with 3 is above it, B with 1 is not, nor D with 1 under 1.15355 on its day 30', () => {
    // z of 50 % is 0.6744898. Day 40: 17/12 · exp(0.6744898 · 0.7120003 / 1.4166667) = 1.4166667 · exp(0.3389900) = 1.98834.
    // Day 20, the last before day 30: 3/4 · exp(0.6744898 · 0.4787136 / 0.75) = 0.75 · exp(0.4305212) = 1.15355.
    expect(steps[2]?.upper).toBeCloseTo(1.98834, 4)
    expect(steps[1]?.upper).toBeCloseTo(1.15355, 4)
    const { above } = found(valves, 0.5)
    expect(above.map(({ id, leaks, age }) => [id, leaks, age])).toEqual([['A', 3, 100]])
    // P(N >= 3) at 17/12: 1 - exp(-17/12) · (1 + 17/12 + 289/288) = 1 - 0.2425211 · 3.4201389 = 0.170544.
    expect(above[0]?.chance).toBeCloseTo(0.170544, 6)
    expect(above[0]?.expected).toBeCloseTo(17 / 12, 14)
  })

  it('95 % limits reach up to 3.7937: nobody is above', () => {
    // 17/12 · exp(1.959964 · 0.7120003 / 1.4166667) = 1.4166667 · exp(0.9850536) = 3.7937.
    const wide = found(valves, 0.95)
    expect(wide.steps.at(-1)?.upper).toBeCloseTo(3.7937, 3)
    expect(wide.above).toEqual([])
  })
})

describe('valve seats of 41 engines as valves that leak', () => {
  const { valveSeats } = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/stats-repeat-events.json'), 'utf8')) as {
    valveSeats: { units: (WatchedUnit & { id: number })[]; mean: Record<string, number> }
  }
  const { steps, above } = found(
    valveSeats.units.map(({ id, watchedTo, events }, place) => valve(`${id}`, watchedTo, events, 17 * place)),
    0.95,
  )

  it.each(Object.entries(valveSeats.mean))('mean up to %s days is %d, as published', (age, mean) => {
    expect(steps.find((step) => step.age === Number(age))?.mean.toFixed(5)).toBe(mean.toFixed(5))
  })

  it('the two pairs on one day stay two', () => {
    expect([139, 653].map((age) => steps.find((step) => step.age === age)?.events)).toEqual([2, 2])
  })

  it('those above have more than the limit at the end of their watch, with the chance of the sum, the rarest first', () => {
    const wanted = valveSeats.units.flatMap(({ id, watchedTo, events }) => {
      const step = steps.findLast(({ age, upper }) => age <= watchedTo && upper !== null)
      if (!step || step.upper === null || events.length <= step.upper) return []
      return [{ id: `${id}`, leaks: events.length, chance: chanceOfOrMore(events.length, step.mean) }]
    })
    wanted.sort((one, other) => one.chance - other.chance)
    expect(above.map(({ id, leaks }) => [id, leaks])).toEqual(wanted.map(({ id, leaks }) => [id, leaks]))
    expect(above.map(({ chance }) => chance)).toEqual(wanted.map(({ chance }) => expect.closeTo(chance, 12)))
    expect(above.slice(0, 3).map(({ id, leaks }) => [id, leaks])).toEqual([
      ['409', 3],
      ['394', 4],
      ['392', 4],
    ])
  })
})
