import { days, mm, mm2 } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { afterNips, filterLife } from './filter.ts'
import { defaultPrior, type SquareMillimetrePerDay, type WearParameters } from './prior.ts'

const noBedIn: WearParameters = {
  readingVariance: mm2(0.5),
  processVariance: 0.01 as SquareMillimetrePerDay,
  bedInDays: days(0),
  bedInFall: mm(0),
  bedInFallVariance: mm2(0),
  bedInTime: days(50),
}
const lives = [
  { ages: [3, 60], reserves: [12, 10.4] },
  { ages: [10, 40, 95], reserves: [12.4, 11.1, 10.6] },
  { ages: [0, 0, 30, 30, 200], reserves: [9, 9.4, 9.1, 8.2, 6] },
  { ages: [5, 50, 120, 180, 260, 420, 500, 730], reserves: [14, 12.9, 12.5, 11.6, 11.9, 9.8, 9.1, 7.2] },
  { ages: [100_000, 100_090, 100_200, 100_270], reserves: [6, 5.5, 5.8, 4.6] },
]
const parameters: WearParameters[] = [
  defaultPrior.wear,
  noBedIn,
  { ...defaultPrior.wear, bedInFallVariance: mm2(3), bedInTime: days(20) },
]

/** The same model written down as one covariance matrix of what all later readings differ from the first. */
function dense(wear: WearParameters, ages: readonly number[], reserves: readonly number[]) {
  const share = ages.map((age) => 1 - Math.exp(-age / wear.bedInTime))
  const worn = ages.map((age, k) => age + wear.bedInDays * share[k]!)
  let sum = 0
  const chance = ages.map((_, k) => {
    if (k > 0) sum += wear.processVariance * (worn[k]! - worn[k - 1]!) + wear.bedInFallVariance * (share[k]! - share[k - 1]!) ** 2
    return sum
  })
  const level = reserves.map((reserve, k) => reserve + wear.bedInFall * share[k]!)
  const later = ages.map((_, k) => k).slice(1)
  const covariance = later.map((i) => later.map((j) => chance[Math.min(i, j)]! + wear.readingVariance * (1 + (i === j ? 1 : 0))))
  const differences = later.map((k) => level[k]! - level[0]!)
  const falls = later.map((k) => -(worn[k]! - worn[0]!))
  // The last level differs from the first reading by wear and by that reading's error.
  const last = ages.length - 1
  const withLast = later.map((k) => chance[k]! + wear.readingVariance)
  const { solved: bySurprise, logDeterminant } = solve(covariance, differences)
  const byFall = solve(covariance, falls).solved
  const byLast = solve(covariance, withLast).solved
  return {
    logLikelihood: (rate: number) => {
      const rest = differences.map((difference, k) => difference - rate * falls[k]!)
      return -(dot(rest, solve(covariance, rest).solved) + logDeterminant) / 2
    },
    information: dot(falls, byFall),
    pull: dot(falls, bySurprise),
    levelAtNoWear: level[0]! + dot(withLast, bySurprise),
    levelByRate: -(worn[last]! - worn[0]!) - dot(withLast, byFall),
    levelVariance: chance[last]! + wear.readingVariance - dot(withLast, byLast),
  }
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, k) => sum + value * other[k]!, 0)
}

/** Gauss elimination of a positive definite matrix. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]) {
  const rows = matrix.map((row, k) => [...row, right[k]!])
  let logDeterminant = 0
  for (const [k, pivot] of rows.entries()) {
    logDeterminant += Math.log(pivot[k]!)
    for (const below of rows.slice(k + 1)) {
      const share = below[k]! / pivot[k]!
      for (let column = k; column < below.length; column++) below[column]! -= share * pivot[column]!
    }
  }
  const solved = right.map(() => 0)
  for (let k = rows.length - 1; k >= 0; k--) {
    const rest = rows[k]!.slice(k + 1, -1).reduce((sum, value, nth) => sum + value * solved[k + 1 + nth]!, 0)
    solved[k] = (rows[k]!.at(-1)! - rest) / rows[k]![k]!
  }
  return { solved, logDeterminant }
}

describe('the filter', () => {
  it('two readings, 10 mm and 9 mm a hundred days later: variances 0.5, 1.5 and 2, so information 100²/2 and pull 100/2', () => {
    const filtered = filterLife(noBedIn, { ages: [0, 100], reserves: [10, 9], from: 0, count: 2 })
    expect(filtered.information).toBeCloseTo(5000, 9)
    expect(filtered.pull).toBeCloseTo(50, 9)
    expect(filtered.levelAtNoWear).toBeCloseTo(10 - 0.75, 12)
    expect(filtered.levelByRate).toBeCloseTo(-25, 12)
    expect(filtered.levelVariance).toBeCloseTo(0.375, 12)
    expect(filtered.logConstant).toBeCloseTo(-(1 / 2 + Math.log(2)) / 2, 12)
  })

  it.each(lives.flatMap((life) => parameters.map((wear) => ({ ...life, wear }))))(
    'equals generalised least squares with a full matrix: ages $ages',
    ({ ages, reserves, wear }) => {
      const filtered = filterLife(wear, { ages, reserves, from: 0, count: ages.length })
      const full = dense(wear, ages, reserves)
      const near = (one: number, other: number) =>
        expect(Math.abs(one - other)).toBeLessThanOrEqual(1e-10 * Math.max(1, Math.abs(other)))
      near(filtered.information, full.information)
      near(filtered.pull, full.pull)
      near(filtered.levelAtNoWear, full.levelAtNoWear)
      near(filtered.levelByRate, full.levelByRate)
      near(filtered.levelVariance, full.levelVariance)
      for (const rate of [0, 0.002, 0.01, 0.05])
        near(filtered.logConstant + filtered.pull * rate - (filtered.information * rate ** 2) / 2, full.logLikelihood(rate))
    },
  )

  it('reads a life in the middle of others as it reads it alone', () => {
    const { ages, reserves } = lives[1]!
    const together = { ages: [1, 2, ...ages, 9], reserves: [5, 5, ...reserves, 5] }
    expect(filterLife(noBedIn, { ...together, from: 2, count: 3 })).toEqual(
      filterLife(noBedIn, { ages, reserves, from: 0, count: 3 }),
    )
  })
})

describe('nips after the last reading', () => {
  const read = filterLife(noBedIn, { ages: [0], reserves: [10], from: 0, count: 1 })

  it('two of 0.875 mm in 100 days lower the level by 1.75 mm, and tell the rate with variance 0.875²/6 + 2 (0.15 0.875)² + 1', () => {
    const carried = afterNips(noBedIn, read, { age: 100, travels: [0.875, 0.875], step: 0.875 })
    const travelVariance = 0.875 ** 2 / 6 + 2 * (0.15 * 0.875) ** 2
    expect(carried.levelAtNoWear).toBeCloseTo(8.25, 12)
    expect(carried.levelVariance).toBeCloseTo(0.5 + travelVariance, 12)
    expect(carried.information).toBeCloseTo(10_000 / (travelVariance + 1), 9)
    expect(carried.pull / carried.information).toBeCloseTo(0.0175, 12)
    expect(carried.age).toBe(100)
  })

  it('a nip on the same day lowers the level and says nothing of the rate', () => {
    const carried = afterNips(noBedIn, read, { age: 0, travels: [1], step: 0.875 })
    expect(carried).toMatchObject({ levelAtNoWear: 9, information: 0, pull: 0 })
  })
})
