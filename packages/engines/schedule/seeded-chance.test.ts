import fc from 'fast-check'
import { expect, it } from 'vitest'
import { seededChance } from './seeded-chance.ts'

const drawn = (seed: number, limit: number, count: number) => {
  const { below } = seededChance(seed)
  return Array.from({ length: count }, () => below(limit))
}

it('gives whole numbers from 0 up to the limit, for any seed', () => {
  fc.assert(
    fc.property(fc.maxSafeInteger(), fc.integer({ min: 1, max: 2001 }), (seed, limit) => {
      for (const number of drawn(seed, limit, 50)) {
        expect(Number.isInteger(number)).toBe(true)
        expect(number).toBeGreaterThanOrEqual(0)
        expect(number).toBeLessThan(limit)
      }
    }),
  )
})

it('gives the same for the same seed, and another course for another', () => {
  expect(drawn(3, 1000, 20)).toEqual(drawn(3, 1000, 20))
  const firsts = Array.from({ length: 200 }, (_, seed) => drawn(seed, 1000, 3).join(' '))
  expect(new Set(firsts).size).toBe(200)
})

it('gives each of ten numbers about a tenth of the time: 6,000 draws, 600 each, 5 deviations of 23', () => {
  const counts = Array.from({ length: 10 }, () => 0)
  for (const number of drawn(1, 10, 6000)) counts[number]!++
  for (const count of counts) expect(Math.abs(count - 600)).toBeLessThan(5 * 23)
})
