import { days, instant } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LookInput, nextLook } from './next-look.ts'

const day = (n: number) => instant(n * 86_400_000)
const rules = { afterRepack: days(3), afterNip: days(1), leastBetween: days(7), mostBetween: days(90) }
const seen: LookInput = {
  lastSeenAt: day(100),
  knownSince: day(0),
  repackToFollow: null,
  nipToFollow: null,
  leakInterval: null,
  reserveReachedAt: null,
  rules,
}
const decided = (input: Partial<LookInput>) => {
  const found = nextLook({ ...seen, ...input })
  return found.ok ? [found.rule, found.at / 86_400_000] : found.problem.code
}

describe('the next look at a gland', () => {
  it.each([
    ['nothing else known: after the longest time', {}, ['longest time between looks', 190]],
    ['the leak interval when it is shorter', { leakInterval: days(40) }, ['leak interval', 140]],
    ['the reserve when it runs out first', { leakInterval: days(40), reserveReachedAt: day(120) }, ['reserve', 120]],
    ['not sooner than the least time, even with no reserve left', { reserveReachedAt: day(60) }, ['reserve', 107]],
    ['a nip nobody looked at since, within the least time', { nipToFollow: day(100) }, ['after a nip', 101]],
    ['a repack nobody looked at since', { repackToFollow: day(99), leakInterval: days(7) }, ['after a repack', 102]],
    ['a gland nobody ever saw, at once', { lastSeenAt: null, leakInterval: days(40) }, ['never seen', 0]],
    ['a follow-up before a routine look of the same day', { nipToFollow: day(106), leakInterval: days(7) }, ['after a nip', 107]],
  ] as const)('%s', (_, input, expected) => expect(decided(input)).toEqual(expected))

  it('refuses a time between looks that is none', () => {
    for (const mostBetween of [0, -1].map((n) => days(n)))
      expect(decided({ rules: { ...rules, mostBetween } })).toBe('look/rule-not-positive')
    expect(decided({ leakInterval: days(0) })).toBe('look/rule-not-positive')
  })

  it('is the earliest of what was weighed, and never later than the longest time', () => {
    const moment = fc.option(fc.integer({ min: 0, max: 1000 }).map(day), { nil: null })
    fc.assert(
      fc.property(
        moment,
        moment,
        moment,
        fc.option(
          fc.integer({ min: 1, max: 400 }).map((n) => days(n)),
          { nil: null },
        ),
        (repack, nip, reserve, leak) => {
          const found = nextLook({
            ...seen,
            repackToFollow: repack,
            nipToFollow: nip,
            reserveReachedAt: reserve,
            leakInterval: leak,
          })
          if (!found.ok) throw new Error(found.problem.detail)
          expect(found.at).toBe(Math.min(...found.weighed.map(({ at }) => at)))
          expect(found.at).toBeLessThanOrEqual(day(190))
        },
      ),
    )
  })
})
