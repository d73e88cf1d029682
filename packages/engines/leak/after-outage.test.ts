import { type Day, days, instant } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leaksAfterOutage, timeAfterOutages } from './after-outage.ts'

const at = (day: number) => instant(day * 86_400_000)
const shareOf = (leakDays: readonly number[], ends: readonly number[], span = 10) => {
  const found = leaksAfterOutage({
    leaks: leakDays.map((day) => ({ openedAt: at(day) })),
    outageEnds: ends.map(at),
    days: days(span),
  })
  if (!found.ok) throw new Error(found.problem.code)
  return found
}
const timeOf = (ends: readonly number[], from: number, to: number, span = 10) => {
  const found = timeAfterOutages({ outageEnds: ends.map(at), days: days(span), from: at(from), to: at(to) })
  if (!found.ok) throw new Error(found.problem.code)
  return found.share
}

describe('leaks after an outage', () => {
  it('count from its end on, and not on the moment the window ends', () => {
    expect(shareOf([99.9, 100, 109.9, 110], [100])).toMatchObject({ within: 2, all: 4, share: 0.5 })
  })

  it('count once where two windows overlap, and the later window goes on', () => {
    expect(shareOf([106, 112, 116], [105, 100])).toMatchObject({ within: 2, all: 3 })
  })

  it('1 of 4 has exact limits 0.00631 and 0.80588', () => {
    const { share, lower, upper } = shareOf([0, 1, 2, 105], [100])
    expect(share).toBe(0.25)
    expect(lower).toBeCloseTo(0.00631, 5)
    expect(upper).toBeCloseTo(0.80588, 5)
  })

  it('have no share where there is none', () => {
    expect(shareOf([], [100])).toEqual({ ok: true, within: 0, all: 0, share: null, lower: null, upper: null })
    expect(shareOf([5], [])).toMatchObject({ within: 0, all: 1, share: 0 })
  })

  it.each([0, -1, NaN, Infinity, 36_526])('are refused within %s days', (span) => {
    const input = { leaks: [], outageEnds: [at(0)], days: span as Day }
    const code = span === 36_526 ? 'number/out-of-range' : 'number/not-positive'
    const refusal = { ok: false, problem: { code, field: 'days' } }
    expect(leaksAfterOutage(input)).toMatchObject(refusal)
    expect(timeAfterOutages({ ...input, from: at(0), to: at(1) })).toMatchObject(refusal)
  })

  it('are as many as a count over every window finds', () => {
    const day = fc.integer({ min: 0, max: 60 })
    fc.assert(
      fc.property(fc.array(day), fc.array(day), fc.integer({ min: 1, max: 9 }), (leakDays, ends, span) => {
        const wanted = leakDays.filter((leak) => ends.some((end) => leak >= end && leak < end + span)).length
        expect(shareOf(leakDays, ends, span).within).toBe(wanted)
      }),
    )
  })
})

describe('time after an outage', () => {
  it('2 of windows of 10 days that overlap by 5 are 15 of 60 days', () => expect(timeOf([20, 25], 0, 60)).toBe(0.25))

  it('is cut off at both ends, and windows outside are none', () => {
    expect(timeOf([-5, 35, 100], 0, 40)).toBe(10 / 40)
    expect(timeOf([-10, 40], 0, 40)).toBe(0)
    expect(timeOf([0], 2, 6)).toBe(1)
  })

  it('is refused where no time lies between', () => {
    const input = { outageEnds: [at(0)], days: days(1), from: at(4), to: at(4) }
    expect(timeAfterOutages(input)).toMatchObject({ ok: false, problem: { code: 'leak/no-time', field: 'to' } })
  })
})
