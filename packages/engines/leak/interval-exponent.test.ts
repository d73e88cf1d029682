import { days } from '@glandkeeper/units/quantity'
import { seededRandom } from '@glandkeeper/fixtures/random'
import { describe, expect, it } from 'vitest'
import type { VisitSpan } from './interval.ts'
import { chooseExponent, logLikelihoodOfSpans } from './interval-exponent.ts'

/** Leaks at rate × age^k, seen at the next visit, sixty days apart more or less. Rates differ by a lognormal of 0.6. */
function valvesOf(exponent: number, count: number, seed: number): VisitSpan[][] {
  const random = seededRandom(seed)
  return Array.from({ length: count }, () => {
    const scale = 400 / random.lognormal(0.6)
    let age = 0
    let leaksAt = scale * random.exponential(1) ** (1 / exponent)
    return Array.from({ length: 18 }, () => {
      const from = age
      const to = age + random.between(40, 80)
      const leaked = leaksAt <= to
      age = leaked ? 0 : to
      if (leaked) leaksAt = scale * random.exponential(1) ** (1 / exponent)
      return { from: days(from), to: days(to), leaked }
    })
  })
}

describe('the exponent of age', () => {
  it('stays 1 where glands do not age', () => {
    const choice = chooseExponent(valvesOf(1, 120, 4))
    expect(choice).toMatchObject({ ok: true, keepsOne: true, group: { exponent: 1 } })
    expect(choice.ok && choice.gain).toBeLessThanOrEqual(3.84)
  })

  it('is found where they do: about 1.8', () => {
    const choice = chooseExponent(valvesOf(1.8, 120, 5))
    if (!choice.ok) throw new Error(choice.problem.detail)
    expect(choice.keepsOne).toBe(false)
    expect(choice.group.exponent).toBe(choice.likeliest)
    expect(Math.abs(choice.likeliest - 1.8)).toBeLessThan(0.35)
    expect(choice.gain).toBeGreaterThan(3.84)
  })

  it('is 1 where fewer than two leaks were seen', () =>
    expect(chooseExponent([[{ from: days(0), to: days(90), leaked: true }]])).toMatchObject({
      ok: true,
      likeliest: 1,
      gain: 0,
      keepsOne: true,
    }))

  it('nothing watched is refused by name', () =>
    expect(chooseExponent([])).toMatchObject({ ok: false, problem: { code: 'interval/nothing-watched' } }))

  it('a visit that is no span has no likelihood', () =>
    expect(logLikelihoodOfSpans([[{ from: days(9), to: days(3), leaked: false }]], { shape: 1, scale: 1, exponent: 1 })).toBe(
      -Infinity,
    ))
})
