import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Lifetime } from './lifetime.ts'
import { solve } from './linear.ts'
import { logRank } from './log-rank.ts'

const ended = (time: number): Lifetime => ({ time, ended: true })
const going = (time: number): Lifetime => ({ time, ended: false })
const group = fc.array(fc.record({ time: fc.integer({ min: 1, max: 30 }), ended: fc.boolean() }), { minLength: 1, maxLength: 20 })

describe('log-rank', () => {
  it('one against two and three: expected 1/3, variance 2/9, chi-squared (2/3)²/(2/9) = 2', () => {
    const test = logRank({ groups: [[ended(1)], [ended(2), ended(3)]], rho: 0 })
    if (!test.ok) throw new Error(test.problem.detail)
    expect(test.groups[0]).toMatchObject({ lives: 1, observed: 1 })
    expect(test.groups[0]!.expected).toBeCloseTo(1 / 3, 15)
    expect(test.chiSquared).toBeCloseTo(2, 13)
    expect(test.degreesOfFreedom).toBe(1)
  })

  it('three groups have two degrees of freedom', () => {
    const test = logRank({
      groups: [
        [ended(1), ended(4)],
        [ended(2), going(5)],
        [ended(3), ended(6)],
      ],
      rho: 0,
    })
    expect(test).toMatchObject({ ok: true, degreesOfFreedom: 2 })
  })

  it('a group nobody watched at any end is left out, not counted as alike', () => {
    const two = logRank({
      groups: [
        [ended(5), ended(6)],
        [ended(7), going(8)],
      ],
      rho: 0,
    })
    const three = logRank({ groups: [[ended(5), ended(6)], [going(1)], [ended(7), going(8)]], rho: 0 })
    if (!two.ok || !three.ok) throw new Error('refused')
    expect(three.degreesOfFreedom).toBe(1)
    expect(three.chiSquared).toBeCloseTo(two.chiSquared, 12)
  })

  it.each([
    [{ groups: [[ended(1)]], rho: 0 }, 'log-rank/one-group', 'groups'],
    [{ groups: [[ended(1)], []], rho: 0 }, 'lifetimes/none', 'groups'],
    [{ groups: [[ended(1)], [ended(NaN)]], rho: 0 }, 'lifetimes/not-a-time', 'groups'],
    [{ groups: [[going(1)], [going(2)]], rho: 0 }, 'log-rank/nothing-to-compare', 'groups'],
    [{ groups: [[ended(1)], [ended(2)]], rho: -1 }, 'log-rank/not-a-power', 'rho'],
    [{ groups: [[ended(1)], [ended(2)]], rho: NaN }, 'log-rank/not-a-power', 'rho'],
  ])('refuses %j: %s', (input, code, field) => {
    expect(logRank(input)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('does not mind the order of groups, and as many ends are expected as seen', () => {
    fc.assert(
      fc.property(group, group, group, fc.constantFrom(0, 1), (one, two, three, rho) => {
        const test = logRank({ groups: [one, two, three], rho })
        const turned = logRank({ groups: [three, one, two], rho })
        expect(test.ok).toBe(turned.ok)
        if (!test.ok || !turned.ok) return
        expect(turned.chiSquared).toBeCloseTo(test.chiSquared, 8)
        const sum = (of: 'observed' | 'expected') => test.groups.reduce((total, tally) => total + tally[of], 0)
        expect(sum('expected')).toBeCloseTo(sum('observed'), 9)
        expect(test.p >= 0 && test.p <= 1).toBe(true)
      }),
    )
  })

  it('finds no difference between a group and its like, whatever the unit of time', () => {
    fc.assert(
      fc.property(group, (lives) => {
        const test = logRank({ groups: [lives, lives.map(({ time, ended: has }) => ({ time, ended: has }))], rho: 0 })
        if (test.ok) expect(test.chiSquared).toBeCloseTo(0, 12)
      }),
    )
  })
})

describe('solve', () => {
  it('x + 2y = 5, 3x + 4y = 11 has x 1, y 2; parallel lines have nothing', () => {
    expect(
      solve(
        [
          [1, 2],
          [3, 4],
        ],
        [5, 11],
      )!.map((x) => x.toFixed(12)),
    ).toEqual(['1.000000000000', '2.000000000000'])
    expect(
      solve(
        [
          [1, 2],
          [2, 4],
        ],
        [5, 11],
      ),
    ).toBeNull()
  })

  it('changes rows where the first cell is nought', () =>
    expect(
      solve(
        [
          [0, 1],
          [1, 0],
        ],
        [2, 3],
      ),
    ).toEqual([3, 2]))
})
