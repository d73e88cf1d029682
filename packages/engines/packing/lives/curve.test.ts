import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { kaplanMeier, survivalAt } from '../../stats/kaplan-meier.ts'
import type { Lifetime } from '../../stats/lifetime.ts'
import { roundTimes, thinned, watchedAt } from './curve.ts'

function stepsOf(lives: readonly Lifetime[]) {
  const curve = kaplanMeier({ lives, confidence: 0.95, scale: 'log-log' })
  if (!curve.ok) throw new Error(curve.problem.detail)
  return curve.steps
}

describe('a curve made thinner', () => {
  const every = (count: number, ended: (index: number) => boolean) =>
    Array.from({ length: count }, (_, index) => ({ time: index + 1, ended: ended(index) }))

  it('of 200 steps stays as it is', () => {
    const steps = stepsOf(every(200, (index) => index % 2 === 0))
    expect(thinned(steps)).toEqual(steps)
  })

  it.each([
    [undefined, 200, 150],
    [60, 60, 40],
  ])(
    'of 2,000 thinned to %s keeps at most %i and more than %i, both ends as they were, and is off by less than its share',
    (asked, most, least) => {
      const steps = stepsOf(every(2000, (index) => index % 3 !== 1))
      const kept = thinned(steps, asked)
      expect(kept.length).toBeLessThanOrEqual(most)
      expect(kept.length).toBeGreaterThan(least)
      expect([kept[0], kept.at(-1)]).toEqual([steps[0], steps.at(-1)])
      const off = steps.map(({ time, survival }) => survivalAt(kept, time) - survival)
      expect(Math.max(...off)).toBeLessThan(1 / (most - 2))
      expect(Math.min(...off)).toBe(0)
    },
  )

  it('of sixty steps stays as it is where sixty are asked for', () => {
    expect(thinned(stepsOf(every(60, (index) => index % 3 !== 1)), 60)).toHaveLength(60)
  })

  it('ends where the last life was seen, though none ended there', () => {
    const steps = stepsOf(every(300, (index) => index < 100))
    const kept = thinned(steps)
    expect(kept.at(-1)).toEqual(steps.at(-1))
    expect(kept).toHaveLength(101)
  })

  it('never has more than 200 steps, whatever the lives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ time: fc.nat(5000), ended: fc.boolean() }), { minLength: 300, maxLength: 900 }),
        (lives) => {
          expect(thinned(stepsOf(lives)).length).toBeLessThanOrEqual(200)
        },
      ),
    )
  })
})

describe('round times under a curve', () => {
  it.each([
    [0, [0]],
    [3, [0, 0.5, 1, 1.5, 2, 2.5, 3]],
    [41, [0, 6, 12, 18, 24, 30, 36]],
    [72, [0, 12, 24, 36, 48, 60, 72]],
    [1022, [0, 144, 288, 432, 576, 720, 864, 1008]],
  ])('up to %d', (longest, times) => expect(roundTimes(longest)).toEqual(times))

  it('are six to eight from two and a half months on, however long', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.5, max: 1e100, noNaN: true }), (longest) => {
        const times = roundTimes(longest)
        expect(times.length >= 6 && times.length <= 8).toBe(true)
        expect(Math.max(...times)).toBeLessThanOrEqual(longest)
      }),
    )
    expect(roundTimes(Number.MAX_VALUE).every(Number.isFinite)).toBe(true)
  })
})

it('a life that ends or is last seen at a time is still watched then', () => {
  const lives = [
    { time: 5, ended: true },
    { time: 5, ended: false },
    { time: 9, ended: true },
  ]
  expect(watchedAt(lives, [0, 5, 6, 10]).map((count) => count.lives)).toEqual([3, 3, 1, 0])
})
