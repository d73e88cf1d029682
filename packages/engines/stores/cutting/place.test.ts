import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seededChance } from '../../schedule/seeded-chance.ts'
import type { Job, Placing } from './job.ts'
import { place, search } from './place.ts'
import { loadsOf, scoreOf } from './score.ts'

/** The best of all ways there are, tried one by one: what is left, then what is wasted. */
function bestOfAll({ cords, items, rules }: Job): { left: number; waste: number } {
  let best = { left: Infinity, waste: Infinity }
  const loads = cords.map(() => 0)
  const tryFrom = (item: number, left: number): void => {
    const size = items[item]?.size
    if (size === undefined) {
      const waste = cords.reduce((sum, { length }, reel) => {
        const end = length - loads[reel]!
        return loads[reel]! > 0 && end < rules.keep ? sum + end : sum
      }, 0)
      if (left < best.left || (left === best.left && waste < best.waste)) best = { left, waste }
      return
    }
    for (const [reel, { length }] of cords.entries()) {
      if (loads[reel]! + size > length + rules.cut) continue
      loads[reel]! += size
      tryFrom(item + 1, left)
      loads[reel]! -= size
    }
    tryFrom(item + 1, left + size)
  }
  tryFrom(0, 0)
  return best
}

const aJob = (lengths: readonly number[], sizes: readonly number[], rules = { cut: 0, keep: 20 }): Job => ({
  cords: lengths.map((length) => ({ length, batch: 'B', rank: 0 })),
  taken: lengths.map(() => 0),
  items: sizes.map((size) => ({ size })),
  rules,
})

const anyJob = fc
  .record({
    lengths: fc.array(fc.integer({ min: 10, max: 120 }), { minLength: 1, maxLength: 3 }),
    sizes: fc.array(fc.integer({ min: 6, max: 60 }), { maxLength: 6 }),
    cut: fc.constantFrom(0, 0, 3),
    keep: fc.constantFrom(0, 20, 60, 200),
  })
  .map(({ lengths, sizes, cut, keep }) => aJob(lengths, sizes, { cut, keep }))

/** Sets of 0.4 to 2.5 m, and reels that together are so much longer. */
function seeded(seed: number, sets: number, reels: number, longer: number, keep: number): Job {
  const chance = seededChance(seed)
  const sizes = Array.from({ length: sets }, () => 4_000 + chance.below(21_000))
  const raw = Array.from({ length: reels }, () => (chance.below(2) === 0 ? 80_000 : 10_000 + chance.below(70_000)))
  const [asked, there] = [sizes, raw].map((lengths) => lengths.reduce((sum, length) => sum + length, 0))
  return aJob(
    raw.map((length) => Math.round((length * asked! * longer) / there!)),
    sizes,
    { cut: 0, keep },
  )
}

const fits = (job: Job, placing: Placing) =>
  loadsOf(job, placing).every((load, reel) => load <= job.cords[reel]!.length + job.rules.cut)

describe('a few items', () => {
  it('are placed as no other of all ways is better', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { placing, isProved } = place(job)
        expect(isProved).toBe(true)
        expect(fits(job, placing)).toBe(true)
        expect(scoreOf(job, placing)).toMatchObject(bestOfAll(job))
      }),
      { numRuns: 300 },
    )
  })

  it('leave one long end rather than two short ones: 60 + 30 on one reel of 100, not one on each', () => {
    expect(place(aJob([100, 100], [60, 30], { cut: 0, keep: 5 })).placing).toEqual([0, 0])
  })

  it('begin the short reel where both waste nothing', () => {
    expect(place(aJob([100, 70], [40])).placing).toEqual([1])
  })
})

describe('a search', () => {
  it('never takes more from a reel than there is, and never beats the best of all ways', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const placing = search(job)
        expect(fits(job, placing)).toBe(true)
        const [found, best] = [scoreOf(job, placing), bestOfAll(job)]
        expect(found.left > best.left || (found.left === best.left && found.waste >= best.waste)).toBe(true)
      }),
      { numRuns: 40 },
    )
  })

  // Measured over 120 such jobs: 113 met, and 0.4 % more wasted in all.
  it('meets the best of all ways in at least 9 of 10 jobs of 10 sets and 4 reels, and wastes at most 2 % more in all', () => {
    const jobs = [1.03, 1.1, 1.3].flatMap((longer) =>
      Array.from({ length: 10 }, (_, seed) => seeded(seed + 1, 10, 4, longer, 10_000)),
    )
    const pairs = jobs.map((job) => ({ found: scoreOf(job, search(job)), best: scoreOf(job, place(job).placing) }))
    const asMuchCut = pairs.filter(({ found, best }) => found.left === best.left)
    const wasted = (of: 'found' | 'best') => asMuchCut.reduce((sum, pair) => sum + pair[of].waste, 0)
    expect(asMuchCut.length).toBeGreaterThanOrEqual(29)
    expect(asMuchCut.filter(({ found, best }) => found.waste === best.waste).length).toBeGreaterThanOrEqual(27)
    expect(wasted('best')).toBeGreaterThan(10_000)
    expect(wasted('found')).toBeLessThanOrEqual(1.02 * wasted('best'))
  }, 20_000)

  it('is the same each time', () => {
    const job = seeded(5, 20, 6, 1.03, 5_000)
    expect(search(job)).toEqual(search(job))
  })

  it('counts what is cut from a reel already', () => {
    const job = { ...aJob([100, 100], [60, 30]), taken: [80, 0] }
    expect(search(job)).toEqual([1, 1])
    expect(place(job).placing).toEqual([1, 1])
  })
})
