import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { meanCumulativeFunction } from './mean-cumulative-function.ts'
import type { WatchedUnit } from './repeat-events.ts'

const unit = (watchedTo: number, ...events: number[]): WatchedUnit => ({ events, watchedTo })
const units = fc.array(
  fc
    .record({ watchedTo: fc.integer({ min: 1, max: 50 }), ages: fc.array(fc.integer({ min: 1, max: 50 }), { maxLength: 8 }) })
    .map(({ watchedTo, ages }) => unit(watchedTo, ...ages.filter((age) => age <= watchedTo))),
  { minLength: 1, maxLength: 20 },
)

function stepsOf(watched: readonly WatchedUnit[], scale: 'plain' | 'log' = 'plain') {
  const curve = meanCumulativeFunction({ units: watched, confidence: 0.95, scale })
  if (!curve.ok) throw new Error(curve.problem.detail)
  return curve.steps
}

describe('mean cumulative function', () => {
  it('3 units, 2 of one on one day: 2/3; then 1 of 2 left: 2/3 + 1/2', () => {
    const steps = stepsOf([unit(10, 4, 4), unit(10, 6), unit(5)])
    expect(steps.map(({ age, atRisk, events }) => [age, atRisk, events])).toEqual([
      [4, 3, 2],
      [6, 2, 1],
    ])
    expect(steps[0]!.mean).toBeCloseTo(2 / 3, 15)
    expect(steps[1]!.mean).toBeCloseTo(7 / 6, 15)
    // Counts 2, 0, 0: sample variance 4/3, over 3 units.
    expect(steps[0]!.standardError).toBeCloseTo(Math.sqrt(4 / 9), 15)
    // Then 0, 1: variance 1/2 over 2 units; covariance with the earlier counts over 3 units, (2/3, 0): -1/2 · 2/3 = -1/3, twice.
    expect(steps[1]!.standardError).toBeCloseTo(Math.sqrt(4 / 9 + 1 / 4 - 2 / 3), 14)
  })

  it('a unit is still watched at the age its watch ends', () => expect(stepsOf([unit(5, 5), unit(9)])[0]!.atRisk).toBe(2))

  it('one unit alone has a mean and no error', () => {
    expect(stepsOf([unit(9, 3)])).toEqual([
      { age: 3, atRisk: 1, events: 1, mean: 1, standardError: null, lower: null, upper: null },
    ])
  })

  it('no events, no steps', () => expect(stepsOf([unit(9)])).toEqual([]))

  it.each([
    [{ units: [], confidence: 0.95 }, 'repeat-events/no-unit', 'units'],
    [{ units: [unit(0)], confidence: 0.95 }, 'repeat-events/not-an-age', 'units'],
    [{ units: [unit(Infinity)], confidence: 0.95 }, 'repeat-events/not-an-age', 'units'],
    [{ units: [unit(5, 6)], confidence: 0.95 }, 'repeat-events/outside-watch', 'units'],
    [{ units: [unit(5, 0)], confidence: 0.95 }, 'repeat-events/outside-watch', 'units'],
    [{ units: [unit(5, NaN)], confidence: 0.95 }, 'repeat-events/outside-watch', 'units'],
    [{ units: [unit(5, 1)], confidence: 0 }, 'confidence/not-a-share', 'confidence'],
  ])('refuses %j: %s', (input, code, field) => {
    expect(meanCumulativeFunction({ ...input, scale: 'log' })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('watched alike, its mean is the count per unit and its error that of a mean of counts', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 1, max: 50 }), { maxLength: 6 }), { minLength: 2, maxLength: 20 }),
        (ages) => {
          const last = stepsOf(ages.map((events) => unit(50, ...events))).at(-1)
          fc.pre(last !== undefined)
          const mean = ages.flat().length / ages.length
          const variance = ages.reduce((sum, events) => sum + (events.length - mean) ** 2, 0) / (ages.length - 1)
          expect(last.mean).toBeCloseTo(mean, 12)
          if (variance > 1e-9) expect(last.standardError).toBeCloseTo(Math.sqrt(variance / ages.length), 9)
        },
      ),
    )
  })

  it('rises, counts every event once, and keeps limits about it; on the log scale above 0', () => {
    fc.assert(
      fc.property(units, (watched) => {
        let before = 0
        for (const { mean, lower, upper } of stepsOf(watched, 'log')) {
          expect(mean).toBeGreaterThan(before)
          before = mean
          if (lower !== null && upper !== null)
            expect(lower > 0 && lower <= mean * (1 + 1e-12) && mean <= upper * (1 + 1e-12)).toBe(true)
        }
        const counted = stepsOf(watched).reduce((sum, { events }) => sum + events, 0)
        expect(counted).toBe(watched.flatMap(({ events }) => events).length)
      }),
    )
  })
})
