import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastWaste } from './bound.ts'
import { placeExactly } from './exact.ts'
import type { Cord } from './job.ts'
import { pricedBound } from './priced-bound.ts'
import { scoreOf } from './score.ts'

const cord = (length: number): Cord => ({ length, batch: 'B', rank: 0 })
const items = (...sizes: number[]) => sizes.map((size) => ({ size }))

describe('the bound of waste', () => {
  it('of 30 + 40 on one reel of 80 with ends of 20 kept is the end of 10', () => {
    expect(leastWaste([cord(80)], items(30, 40), { cut: 0, keep: 20 })).toBe(10)
  })

  it('is 0 where an end goes back', () => {
    expect(leastWaste([cord(90)], items(30, 40), { cut: 0, keep: 20 })).toBe(0)
  })

  it('of 5 times 30 on three reels of 70, ends kept from 15: one takes 30, two take 60 and waste 10 each', () => {
    expect(leastWaste([70, 70, 70].map(cord), items(30, 30, 30, 30, 30), { cut: 0, keep: 15 })).toBe(20)
  })

  it('counts whole reels where no end is kept: 7 times 30 fill 210 of three reels of 100', () => {
    expect(leastWaste([100, 100, 100].map(cord), items(30, 30, 30, 30, 30, 30, 30), { cut: 0, keep: 100 })).toBe(90)
  })

  it('by prices sees that 60 goes into 100 once: four of them and a 40 begin four reels, where sums of 100 ask for three', () => {
    const reels = [100, 100, 100, 100].map(cord)
    const pieces = items(60, 60, 60, 60, 40)
    expect(leastWaste(reels, pieces, { cut: 0, keep: 100 })).toBe(20)
    expect(pricedBound(reels, pieces, { cut: 0, keep: 100 }, 120)).toBe(120)
  })
})

describe('either bound', () => {
  const anyJob = fc.record({
    cords: fc.array(fc.integer({ min: 20, max: 120 }).map(cord), { minLength: 1, maxLength: 4 }),
    items: fc.array(fc.integer({ min: 6, max: 60 }), { minLength: 1, maxLength: 7 }).map((sizes) => items(...sizes)),
    rules: fc.record({ cut: fc.constantFrom(0, 0, 3), keep: fc.constantFrom(0, 20, 60, 200) }),
    /** Of the search: the bound holds whatever it is. */
    found: fc.integer({ min: -10, max: 100 }),
  })

  it('is never above what the best cutting wastes, whatever is cut', () => {
    let met = 0
    let tried = 0
    fc.assert(
      fc.property(anyJob, ({ cords, items: all, rules, found }) => {
        const whole = { cords, taken: cords.map(() => 0), items: all, rules }
        const placing = placeExactly(whole)
        const cut = { ...whole, items: all.filter((_, item) => placing[item] !== -1) }
        if (cut.items.length === 0) return
        const { left, waste } = scoreOf(cut, placeExactly(cut))
        expect(left).toBe(0)
        expect(leastWaste(cords, cut.items, rules)).toBeLessThanOrEqual(waste)
        expect(pricedBound(cords, cut.items, rules, found)).toBeLessThanOrEqual(waste)
        tried += 1
        if (leastWaste(cords, cut.items, rules) === waste) met += 1
      }),
      { numRuns: 120, seed: 1 },
    )
    expect(met / tried).toBeGreaterThan(0.9)
  })

  it('holds also where sums are counted in cells coarser than the sizes', () => {
    const anyLong = fc.record({
      cords: fc.array(fc.integer({ min: 60_000, max: 200_000 }).map(cord), { minLength: 1, maxLength: 3 }),
      items: fc.array(fc.integer({ min: 15_000, max: 90_000 }), { minLength: 1, maxLength: 6 }).map((sizes) => items(...sizes)),
      rules: fc.record({ cut: fc.constantFrom(0, 20), keep: fc.constantFrom(5_000, 40_000, 200_000) }),
    })
    fc.assert(
      fc.property(anyLong, ({ cords, items: all, rules }) => {
        const whole = { cords, taken: cords.map(() => 0), items: all, rules }
        const placing = placeExactly(whole)
        const cut = { ...whole, items: all.filter((_, item) => placing[item] !== -1) }
        if (cut.items.length === 0) return
        const { waste } = scoreOf(cut, placeExactly(cut))
        expect(pricedBound(cords, cut.items, rules, waste)).toBeLessThanOrEqual(waste)
      }),
      { numRuns: 8 },
    )
  })
})
