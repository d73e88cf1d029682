import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reachable } from './reachable.ts'

const sizes = fc.array(fc.integer({ min: 1, max: 90 }), { maxLength: 9 })

function allSums(of: readonly number[]): number[] {
  const [first, ...others] = of
  return first === undefined ? [0] : allSums(others).flatMap((sum) => [sum, sum + first])
}

describe('reachable sums', () => {
  it('of 300, 200 and 200 up to 480: 300, 200, 400, and not 500', () => {
    const { largestUpTo, partsOf } = reachable([300, 200, 200], 480)
    expect([480, 399, 299, 199, -1].map(largestUpTo)).toEqual([400, 300, 200, 0, 0])
    expect(partsOf(400)).toEqual([2, 1])
  })

  it('are those of all choices, each made of parts that are there once', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 3 }), (given, limit, times) => {
        const own = given.map((size) => size * times)
        const { largestUpTo, partsOf } = reachable(own, limit)
        const sums = allSums(own)
        for (let most = 0; most <= limit; most += 7) {
          const found = largestUpTo(most)
          expect(found).toBe(Math.max(...sums.filter((sum) => sum <= most)))
          const parts = partsOf(found)
          expect(new Set(parts).size).toBe(parts.length)
          expect(parts.reduce((sum, part) => sum + own[part]!, 0)).toBe(found)
        }
      }),
    )
  })

  it('end with the limit when that is enough', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 0, max: 300 }), (own, limit) => {
        expect(reachable(own, limit, true).largestUpTo(limit)).toBe(reachable(own, limit).largestUpTo(limit))
      }),
    )
  })
})
