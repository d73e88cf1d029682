import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wilsonShareLimits } from '../stats/binomial.ts'
import { normalDistribution, normalQuantile } from '../stats/normal.ts'
import { calibrationCurve, calibrationOf } from './calibration.ts'
import type { JudgedForecast } from './calibration-place.ts'

const judged = (given: Partial<JudgedForecast>, index: number): JudgedForecast => ({
  life: `life ${index}`,
  group: 'steam',
  span: '3',
  place: 0.5,
  ranOut: true,
  middleMiss: null,
  straightLineMiss: null,
  ...given,
})
const seen = (forecasts: readonly JudgedForecast[]) => {
  const found = calibrationOf(forecasts)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

/** Share that had run out by the middle of its forecast. */
const halfOf = (forecasts: readonly JudgedForecast[]) => {
  const found = calibrationCurve({ judged: forecasts, chances: [0.5] })
  return found.ok ? (found.points[0]?.share ?? NaN) : NaN
}

/** Mulberry's generator: the same numbers in every run. */
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/**
 * Lives whose ln of length is normal with deviation 0.6, forecast as `believed`; each is watched for a time of its own.
 * `watchedTo` 0: all are watched to the end; else to a place evenly drawn between 0 and `watchedTo` of the true course.
 */
function simulated({ count, believed, watchedTo, seed }: { count: number; believed: number; watchedTo: number; seed: number }) {
  const random = seeded(seed)
  return Array.from({ length: count }, (_, index) => {
    const truth = 0.6 * normalQuantile(random())
    const watched = watchedTo === 0 ? Infinity : 0.6 * normalQuantile(Math.min(random() * watchedTo, 1))
    return judged({ place: normalDistribution(Math.min(truth, watched) / believed), ranOut: truth <= watched }, index)
  })
}

describe('the share of dates inside the 80 % interval', () => {
  it('of 20 that ran out with 15 inside is 75 %, with the score limits of 15 in 20', () => {
    const places = [...Array<number>(15).fill(0.5), 0.01, 0.02, 0.03, 0.95, 0.98]
    const wanted = wilsonShareLimits({ found: 15, lookedAt: 20, confidence: 0.95 })
    const { within80 } = seen(places.map((place, index) => judged({ place }, index)))
    expect(wanted.ok && within80).toMatchObject({ share: expect.closeTo(0.75, 12) as number })
    expect(within80?.lower).toBeCloseTo(wanted.ok ? wanted.lower : NaN, 12)
    expect(within80?.upper).toBeCloseTo(wanted.ok ? wanted.upper : NaN, 12)
  })

  it('with all of 12 inside still has a lower limit, 75.7 %', () => {
    const { within80 } = seen(Array.from({ length: 12 }, (_, index) => judged({}, index)))
    expect(within80).toMatchObject({ share: 1, upper: expect.closeTo(1, 12) as number })
    expect(within80?.lower).toBeCloseTo(0.7575, 4)
  })

  it('with 2 out early, 4 last seen at 0.3, 4 out at 0.5 and 2 at 0.95 is 10/12 (1 - 2/6): 55.6 %', () => {
    const at = (count: number, place: number, ranOutThere: boolean) =>
      Array.from({ length: count }, () => ({ place, ranOut: ranOutThere }))
    const all = [...at(2, 0.05, true), ...at(4, 0.3, false), ...at(4, 0.5, true), ...at(2, 0.95, true)]
    const { within80, ranOut } = seen(all.map((given, index) => judged(given, index)))
    expect(within80?.share).toBeCloseTo((10 / 12) * (4 / 6), 12)
    expect(ranOut).toBe(8)
  })

  it('is 80 % for right forecasts, with limits 95 times in 100 (of 200 plants 186 to 196)', () => {
    const hits = Array.from({ length: 200 }, (_, seed) => seen(simulated({ count: 150, believed: 0.6, watchedTo: 0, seed })))
    const covered = hits.filter(({ within80 }) => within80!.lower <= 0.8 && within80!.upper >= 0.8).length
    expect(covered).toBeGreaterThanOrEqual(184)
    expect(covered).toBeLessThanOrEqual(197)
  })

  it('is not moved by lives that were watched for a time only', () => {
    const plants = Array.from({ length: 60 }, (_, seed) => seen(simulated({ count: 400, believed: 0.6, watchedTo: 1.3, seed })))
    const mean = plants.reduce((sum, { within80 }) => sum + (within80?.share ?? NaN), 0) / plants.length
    expect(Math.abs(mean - 0.8)).toBeLessThan(0.01)
    const halves = Array.from({ length: 60 }, (_, seed) => halfOf(simulated({ count: 400, believed: 0.6, watchedTo: 1.3, seed })))
    expect(Math.abs(halves.reduce((sum, share) => sum + share, 0) / 60 - 0.5)).toBeLessThan(0.01)
    const covered = plants.filter(({ within80 }) => within80!.lower <= 0.8 && within80!.upper >= 0.8).length
    expect(covered).toBeGreaterThanOrEqual(53)
    expect(plants[0]!.ranOut).toBeLessThan(280)
  })

  it('of forecasts that are twice too sure is seen: 48 % in truth', () => {
    const { within80, within95 } = seen(simulated({ count: 600, believed: 0.3, watchedTo: 1.3, seed: 5 }))
    expect(within80!.upper).toBeLessThan(0.6)
    expect(within80!.lower).toBeLessThan(0.48)
    expect(within80!.upper).toBeGreaterThan(0.48)
    expect(within95!.upper).toBeLessThan(0.8)
  })

  it('counts each life once: three forecasts of each make the limits no narrower', () => {
    const once = simulated({ count: 100, believed: 0.6, watchedTo: 0, seed: 3 })
    const { within80, lives, forecasts } = seen([...once, ...once, ...once])
    expect({ lives, forecasts }).toEqual({ lives: 100, forecasts: 300 })
    const wanted = seen(once).within80!
    expect(within80?.share).toBeCloseTo(wanted.share, 12)
    expect(within80!.upper - within80!.lower).toBeCloseTo(wanted.upper - wanted.lower, 12)
  })

  it('is not told from nine lives, nor from lives of which none was watched beyond 0.6', () => {
    expect(seen(simulated({ count: 9, believed: 0.6, watchedTo: 0, seed: 1 }))).toMatchObject({
      within80: null,
      unknownBecause: 'too few lives',
    })
    const young = Array.from({ length: 40 }, (_, index) => judged({ place: 0.6 * (index / 40), ranOut: index % 4 === 0 }, index))
    expect(seen(young)).toMatchObject({ within80: null, unknownBecause: 'not watched long enough' })
  })
})

describe('the curve of calibration', () => {
  it('lies on the diagonal for right forecasts and ends where watching ends', () => {
    const chances = [0.1, 0.3, 0.5, 0.7, 0.9]
    const right = calibrationCurve({ judged: simulated({ count: 3000, believed: 0.6, watchedTo: 1.5, seed: 11 }), chances })
    if (!right.ok) throw new Error(right.problem.detail)
    expect(right.points).toHaveLength(5)
    for (const { chance, lower, upper } of right.points) expect(lower < chance && chance < upper).toBe(true)
    const young = calibrationCurve({ judged: simulated({ count: 300, believed: 0.6, watchedTo: 0.6, seed: 11 }), chances })
    expect(young.ok && young.points.map(({ chance }) => chance)).toEqual([0.1, 0.3, 0.5])
  })
})

describe('how far off the middle was', () => {
  it('is the median, and beside a straight line that of the same forecasts', () => {
    const misses: [number, number | null][] = [[10, 40], [20, null], [30, 60], [90, 80]] // prettier-ignore
    const found = seen(misses.map(([middleMiss, straightLineMiss], index) => judged({ middleMiss, straightLineMiss }, index)))
    expect(found.middleMiss).toEqual({ forecasts: 4, days: 25 })
    expect(found.besideStraightLine).toEqual({ forecasts: 3, days: 30, straightLineDays: 60 })
  })
  it('is not known where no life ran out', () =>
    expect(seen([judged({ ranOut: false }, 1)])).toMatchObject({ middleMiss: null, besideStraightLine: null }))
})

it('a place that is no number is refused by name', () => {
  const found = calibrationOf([judged({ place: NaN }, 1)])
  expect(found.ok ? null : found.problem.code).toBe('lifetimes/not-a-time')
})

it('shares and limits are in order and from 0 to 1, whatever the places', () => {
  const one = fc.record({
    place: fc.double({ min: 0, max: 1, noNaN: true }),
    ranOut: fc.boolean(),
    life: fc.integer({ min: 1, max: 16 }).map(String),
  })
  fc.assert(
    fc.property(fc.array(one, { minLength: 0, maxLength: 60 }), (all) => {
      const { within80, within95 } = seen(all.map((given, index) => judged(given, index)))
      for (const found of [within80, within95]) {
        if (found === null) continue
        expect(found.lower).toBeGreaterThanOrEqual(0)
        expect(found.lower).toBeLessThanOrEqual(found.share + 1e-9)
        expect(found.upper).toBeGreaterThanOrEqual(found.share - 1e-9)
        expect(found.upper).toBeLessThanOrEqual(1)
      }
    }),
  )
})
