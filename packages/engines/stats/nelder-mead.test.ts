import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minimise } from './nelder-mead.ts'

const settings = { step: 0.5, tolerance: 1e-14, mostEvaluations: 5000 }

describe('minimise', () => {
  it('finds (3, -2) in (x - 3)² + 10 (y + 2)² + 7, value 7', () => {
    const { point, value, hasConverged } = minimise(([x = 0, y = 0]) => (x - 3) ** 2 + 10 * (y + 2) ** 2 + 7, [0, 0], settings)
    expect(hasConverged).toBe(true)
    expect(value).toBeCloseTo(7, 12)
    expect(point[0]).toBeCloseTo(3, 5)
    expect(point[1]).toBeCloseTo(-2, 5)
  })

  it("goes down Rosenbrock's bent valley to (1, 1)", () => {
    const valley = ([x = 0, y = 0]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2
    const { point, hasConverged } = minimise(valley, [-1.2, 1], settings)
    expect(hasConverged).toBe(true)
    expect(point[0]).toBeCloseTo(1, 5)
    expect(point[1]).toBeCloseTo(1, 5)
  })

  it("finds nought of Powell's function of four numbers", () => {
    const powell = ([a = 0, b = 0, c = 0, d = 0]: readonly number[]) =>
      (a + 10 * b) ** 2 + 5 * (c - d) ** 2 + (b - 2 * c) ** 4 + 10 * (a - d) ** 4
    expect(minimise(powell, [3, -1, 0, 1], settings).value).toBeLessThan(1e-8)
  })

  it('takes a stride of its own for each coordinate', () => {
    const seen: (readonly number[])[] = []
    minimise((point) => seen.push(point), [1, 2], { step: [10, 0.1], tolerance: 1e-9, mostEvaluations: 3 })
    expect(seen).toEqual([
      [1, 2],
      [11, 2],
      [1, 2.1],
    ])
  })

  it('keeps clear of points the objective refuses by Infinity or NaN', () => {
    const wall = ([x = 0]: readonly number[]) => (x < 0 ? NaN : x > 5 ? Infinity : (x - 0.1) ** 2)
    expect(minimise(wall, [4], settings).point[0]).toBeCloseTo(0.1, 5)
  })

  it('says so when the evaluations run out, and gives the best so far', () => {
    const spent = minimise(([x = 0]) => (x - 1000) ** 2, [0], { step: 0.1, tolerance: 1e-14, mostEvaluations: 20 })
    expect(spent.hasConverged).toBe(false)
    expect(spent.value).toBeLessThan(1e6)
    expect(spent.evaluations).toBeLessThanOrEqual(22)
  })

  it('does not converge on an objective that is nowhere finite', () => {
    const nowhere = minimise(() => NaN, [1, 1], settings)
    expect(nowhere).toMatchObject({ value: Infinity, hasConverged: false })
  })

  it('never gives worse than it was given, and what it gives is the value there', () => {
    const numbers = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 1, maxLength: 4 })
    fc.assert(
      fc.property(numbers, (start) => {
        const bowl = (point: readonly number[]) => point.reduce((sum, x, index) => sum + Math.abs(x - index) ** 1.5, 0)
        const found = minimise(bowl, start, { ...settings, mostEvaluations: 200 })
        expect(found.value).toBeLessThanOrEqual(bowl(start))
        expect(bowl(found.point)).toBe(found.value)
      }),
    )
  })
})
