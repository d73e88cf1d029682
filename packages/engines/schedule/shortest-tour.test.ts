import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MOST_NODES, shortestTour } from './shortest-tour.ts'

const settings = { seed: 1, iterations: 200 }
type Point = readonly [number, number]

const apart = (points: readonly Point[]) => (from: number, to: number) =>
  Math.sqrt((points[from]![0] - points[to]![0]) ** 2 + (points[from]![1] - points[to]![1]) ** 2)
const around = (order: readonly number[], distance: (from: number, to: number) => number) =>
  order.reduce((sum, node, position) => {
    const next = order[(position + 1) % order.length]!
    return node === next ? sum : sum + distance(Math.min(node, next), Math.max(node, next))
  }, 0)

function shortest(count: number, distance: (from: number, to: number) => number, seed = 1, iterations = settings.iterations) {
  const tour = shortestTour(count, distance, { seed, iterations })
  if (!tour.ok) throw new Error(tour.problem.detail)
  return tour
}

/** Every order of the numbers given. */
function* ordersOf(numbers: readonly number[]): Generator<number[]> {
  if (numbers.length === 0) yield []
  for (const first of numbers) for (const rest of ordersOf(numbers.filter((number) => number !== first))) yield [first, ...rest]
}

const points = (minLength: number, maxLength: number) =>
  fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 })), { minLength, maxLength })

describe('a short tour', () => {
  it.each([
    [0, 0],
    [1, 0],
    [2, 20],
    [3, 40],
    [4, 60],
  ])('of %i nodes 10 apart on a line: there and back, %i', (count, length) => {
    const tour = shortest(count, (from, to) => 10 * (to - from))
    expect(tour.order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, node) => node))
    expect(tour.length).toBe(length)
  })

  it('of twelve hours taken by fives is the clock: 12 legs of 1', () => {
    const hours = Array.from({ length: 12 }, (_, node) => (node * 5) % 12)
    const distance = (from: number, to: number) => {
      const steps = Math.abs(hours[from]! - hours[to]!)
      return Math.min(steps, 12 - steps)
    }
    expect(shortest(12, distance).length).toBe(12)
  })

  it('is the shortest of all for up to 7 nodes', () => {
    fc.assert(
      fc.property(points(4, 7), (places) => {
        const distance = apart(places)
        const others = places.map((_, node) => node).slice(1)
        let least = Infinity
        for (const order of ordersOf(others)) least = Math.min(least, around([0, ...order], distance))
        expect(shortest(places.length, distance).length).toBeCloseTo(least, 9)
      }),
      { numRuns: 200 },
    )
  })

  it('holds every node once, is as long as it says, and never longer than as numbered', () => {
    fc.assert(
      fc.property(points(0, 40), fc.integer(), fc.constantFrom(0, 1, 50), (places, seed, iterations) => {
        const distance = apart(places)
        const tour = shortest(places.length, distance, seed, iterations)
        const numbered = places.map((_, node) => node)
        expect(tour.order.toSorted((a, b) => a - b)).toEqual(numbered)
        expect(tour.length).toBeCloseTo(around(tour.order, distance), 9)
        expect(tour.length).toBeLessThanOrEqual(around(numbered, distance) + 1e-9)
        expect(shortest(places.length, distance, seed, iterations)).toEqual(tour)
      }),
    )
  })

  it('without an iteration keeps what is good in the order it is given', () => {
    fc.assert(
      fc.property(points(30, 40), (places) => {
        const good = shortest(places.length, apart(places))
        const renumbered = good.order.map((node) => places[node]!)
        expect(shortest(places.length, apart(renumbered), 1, 0).length).toBeLessThanOrEqual(good.length + 1e-9)
      }),
      { numRuns: 30 },
    )
  })

  it('gets no longer with more iterations', () => {
    fc.assert(
      fc.property(points(8, 30), fc.integer(), (places, seed) => {
        const lengths = [0, 20, 200].map((iterations) => shortest(places.length, apart(places), seed, iterations).length)
        expect(lengths).toEqual(lengths.toSorted((a, b) => b - a))
      }),
      { numRuns: 50 },
    )
  })

  it('of distances that obey no triangle, and of none at all, comes to an end', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1e12, noNaN: true }), { minLength: 66, maxLength: 66 }), (numbers) => {
        const tour = shortest(12, (from, to) => numbers[(to * (to - 1)) / 2 + from]!)
        expect(tour.length).toBeLessThan(Infinity)
      }),
    )
    expect(shortest(30, () => 0).length).toBe(0)
  })

  it.each([
    ['count', 'walk/too-many', () => shortestTour(-1, () => 1, settings)],
    ['count', 'walk/too-many', () => shortestTour(2.5, () => 1, settings)],
    ['count', 'walk/too-many', () => shortestTour(Number.NaN, () => 1, settings)],
    ['count', 'walk/too-many', () => shortestTour(MOST_NODES + 1, () => 1, settings)],
    ['seed', 'walk/setting', () => shortestTour(5, () => 1, { ...settings, seed: Number.NaN })],
    ['seed', 'walk/setting', () => shortestTour(5, () => 1, { ...settings, seed: 0.5 })],
    ['iterations', 'walk/setting', () => shortestTour(5, () => 1, { ...settings, iterations: -1 })],
    ['iterations', 'walk/setting', () => shortestTour(5, () => 1, { ...settings, iterations: Infinity })],
    ['iterations', 'walk/setting', () => shortestTour(5, () => 1, { ...settings, iterations: 1_000_001 })],
    ['distance', 'walk/distance', () => shortestTour(5, () => Number.NaN, settings)],
    ['distance', 'walk/distance', () => shortestTour(2, () => -1, settings)],
    ['distance', 'walk/distance', () => shortestTour(5, (_, to) => (to === 4 ? Infinity : 1), settings)],
  ])('is refused for its %s (%s)', (field, code, call) => {
    expect(call()).toMatchObject({ ok: false, problem: { code, field } })
  })
})
