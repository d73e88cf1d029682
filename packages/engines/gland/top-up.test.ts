import { days, mm, ratio, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { topUpAdvice, topUpLimits } from './top-up.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const gland = {
  ageOfPacking: days(200),
  usualLife: days(900),
  reserve: mm(1),
  followerEntry: mm(17),
  section: mm(8),
  leastEngagement: mm(3.2),
  topUpRings: 0,
  dieFormed: false,
  leakPersists: false,
}
const advised = (change: Partial<Parameters<typeof topUpAdvice>[0]> = {}) => {
  const advice = topUpAdvice({ ...gland, ...change })
  if (!advice.ok) throw new Error(advice.problem.detail)
  return { ...advice, codes: advice.reasons.map(({ code }) => code), warned: advice.cautions.map(({ code }) => code) }
}

describe('adjust, top up or repack', () => {
  it('adjust only while more than 2 mm is left and the leak stops', () => {
    expect(advised({ reserve: mm(2.1) })).toMatchObject({ advice: 'adjust only', codes: ['top-up/travel-left'], warned: [] })
    expect(advised({ reserve: mm(2) }).advice).not.toBe('adjust only')
  })

  it('top up with one ring when 17 - 8 = 9 of nose still enters and nothing speaks against it', () => {
    const advice = advised()
    expect(advice).toMatchObject({ advice: 'top up with one ring', codes: ['top-up/reserve-used', 'top-up/room'] })
    expect(advice.reasons[1]!.detail).toContain('9 mm')
    expect(advice.warned).toEqual(['top-up/stop-gap', 'top-up/isolate'])
  })

  it('says so when the usual life is not known', () => {
    expect(advised({ usualLife: null }).codes).toContain('top-up/life-unknown')
  })

  it.each([
    ['the leak persists with travel left', { leakPersists: true, reserve: mm(6) }, ['top-up/leak-persists']],
    ['the set is die-formed', { dieFormed: true }, ['top-up/die-formed']],
    ['a ring was added before', { topUpRings: 1 }, ['top-up/added-before']],
    ['630 of 900 days are over', { ageOfPacking: days(630) }, ['top-up/old']],
    ['no ring goes in: 11.1 - 8 = 3.1 of 3.2', { followerEntry: mm(11.1) }, ['top-up/no-room']],
    ['two of these at once', { dieFormed: true, topUpRings: 2 }, ['top-up/die-formed', 'top-up/added-before']],
  ])('full repack when %s, never without isolating', (_, change, codes) => {
    expect(advised(change)).toMatchObject({ advice: 'full repack', codes, warned: ['top-up/isolate'] })
  })

  it('629 days and 11.2 of entry are still good for a top-up', () => {
    expect(advised({ ageOfPacking: days(629), followerEntry: mm(11.2) }).advice).toBe('top up with one ring')
  })

  it('every limit may be set: reserve 0.5, two rings, the whole of life', () => {
    expect(advised({ limits: { ...topUpLimits, reserve: mm(0.5) } }).advice).toBe('adjust only')
    expect(advised({ topUpRings: 1, limits: { ...topUpLimits, rings: 2 } }).advice).toBe('top up with one ring')
    expect(advised({ ageOfPacking: days(880), limits: { ...topUpLimits, ageShare: ratio(0.99) } }).advice).toBe(
      'top up with one ring',
    )
  })
})

describe('what is not judged', () => {
  it.each([
    ['a negative age', { ageOfPacking: days(-1) }, 'top-up/age-not-known', 'ageOfPacking'],
    ['a life of no days', { usualLife: days(0) }, 'number/not-positive', 'usualLife'],
    ['no section', { section: mm(0) }, 'number/not-positive', 'section'],
    ['a negative entry', { followerEntry: mm(-1) }, 'number/negative', 'followerEntry'],
    ['half a top-up', { topUpRings: 0.5 }, 'number/not-a-count', 'topUpRings'],
    ['a limit of minus one ring', { limits: { ...topUpLimits, rings: -1 } }, 'number/not-a-count', 'limits.rings'],
    ['more than a life', { limits: { ...topUpLimits, ageShare: ratio(1.5) } }, 'number/not-a-share', 'limits.ageShare'],
  ])('%s', (_, change, code, field) => {
    expect(topUpAdvice({ ...gland, ...change })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('any doubles give advice with a reason, or a named problem', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, anyNumber, fc.boolean(), (age, life, reserve, entry, leakPersists) => {
        const given = { ...gland, ageOfPacking: age, usualLife: life, reserve, followerEntry: entry, leakPersists }
        const advice = topUpAdvice(given as never)
        if (!advice.ok) {
          expect(advice.problem.code).toMatch(/\w\/\w/)
          return
        }
        expect(advice.reasons.length).toBeGreaterThan(0)
        expect(advice.cautions.length > 0).toBe(advice.advice !== 'adjust only')
        for (const { detail } of advice.reasons) expect(detail).not.toMatch(/NaN|Infinity/)
      }),
    )
  })

  it('an older packing, or one more ring added, never turns from repack to top-up', () => {
    const age = fc.double({ min: 0, max: 2000, noNaN: true })
    const order = ['adjust only', 'top up with one ring', 'full repack']
    fc.assert(
      fc.property(age, age, fc.integer({ min: 0, max: 4 }), (one, other, topUpRings) => {
        const rank = (value: number, rings: number) =>
          order.indexOf(advised({ ageOfPacking: days(value), topUpRings: rings }).advice)
        expect(rank(Math.max(one, other), topUpRings)).toBeGreaterThanOrEqual(rank(Math.min(one, other), topUpRings))
        expect(rank(one, topUpRings + 1)).toBeGreaterThanOrEqual(rank(one, topUpRings))
      }),
    )
  })
})

// @ts-expect-error a bare number is no age
topUpAdvice({ ...gland, ageOfPacking: 200 })
// @ts-expect-error turns are no reserve
topUpAdvice({ ...gland, reserve: turns(1) })
