import { fitPriors, type PriorFit } from '@glandkeeper/engines/wear/fit'
import type { GroupPrior, SquareMillimetrePerDay } from '@glandkeeper/engines/wear/prior'
import { beforeAll, describe, expect, it } from 'vitest'
import { base, livesOf, scenarios, tooHard, watchedLives } from './plant.ts'
import { type Scores, scoresOf } from './score.ts'

const JUDGED = 1500

/** What is wrong with how often the truth lay inside the intervals; nothing when they are as wide as they say. */
function coverageFaults({ byReadings }: Scores): string[] {
  return byReadings.flatMap(({ readings, within80, within95 }) => [
    ...(within80 >= 0.74 && within80 <= 0.88 ? [] : [`${readings} readings: ${within80} inside the 80 % interval`]),
    ...(within95 >= 0.9 && within95 <= 0.99 ? [] : [`${readings} readings: ${within95} inside the 95 % interval`]),
  ])
}

function fitted(scenario: (typeof scenarios)[number]): PriorFit {
  const fit = fitPriors({ lives: watchedLives(scenario, 11) })
  if (!fit.ok) throw new Error(fit.problem.detail)
  return fit
}

const found: Scores[] = []

describe.each(scenarios)('on an invented plant: $name', (scenario) => {
  let scores: Scores
  beforeAll(() => {
    scores = scoresOf(livesOf(scenario, 23, JUDGED), fitted(scenario))
    found.push(scores)
  }, 60_000)

  it('the 80 % interval holds 74 to 88 % of the true dates and the 95 % interval 90 to 99 %, with 1 to 12 readings', () => {
    expect(scores.byReadings.map(({ readings }) => readings)).toEqual([1, 2, 3, 5, 8, 12])
    for (const { cases } of scores.byReadings) expect(cases).toBeGreaterThan(500)
    expect(coverageFaults(scores)).toEqual([])
  })

  it('the chance of running out in a year is off by at most 0.05 on average', () =>
    expect(scores.yearChanceOff).toBeLessThanOrEqual(0.05))

  it('with five readings or more the middle date is nearer than that of a straight line through the same readings', () =>
    expect(scores.error).toBeLessThan(scores.straightLineError))
})

describe('over all the plants', () => {
  it('with five readings or more the middle date is off by at least 20 % less than a straight line', () => {
    const mean = (of: (scores: Scores) => number) => found.reduce((sum, scores) => sum + of(scores), 0) / found.length
    expect(found).toHaveLength(scenarios.length)
    expect(mean(({ error }) => error)).toBeLessThanOrEqual(0.8 * mean(({ straightLineError }) => straightLineError))
    expect(found[0]!.error).toBeLessThanOrEqual(0.8 * found[0]!.straightLineError)
  })
})

describe.each(tooHard)('on a plant that the model does not know, where $name', (scenario) => {
  it('the chance of running out in a year still holds, and the middle date is nearer than a straight line', () => {
    const scores = scoresOf(livesOf(scenario, 23, JUDGED), fitted(scenario))
    expect(scores.yearChanceOff).toBeLessThanOrEqual(0.05)
    expect(scores.error).toBeLessThan(scores.straightLineError)
  }, 60_000)
})

describe('a test of the test', () => {
  it('the intervals fail when the forecast knows no chance in wear', () => {
    const without = (prior: GroupPrior): GroupPrior => ({
      ...prior,
      wear: { ...prior.wear, processVariance: 0 as SquareMillimetrePerDay },
    })
    const fit = fitted(base)
    const groups = Object.fromEntries(Object.entries(fit.groups).map(([name, prior]) => [name, without(prior)]))
    const scores = scoresOf(livesOf(base, 23, JUDGED), { groups, plant: without(fit.plant) })
    expect(coverageFaults(scores).length).toBeGreaterThan(0)
  }, 60_000)
})
