import { mm } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastGapOf, reserveOf } from './reserve.ts'

const gland = { keepClear: mm(3), noseLength: mm(20), leastEngagement: mm(3.2) }

describe('the reserve', () => {
  it('is the gap less what is kept clear: 6.6 - 3 = 3.6', () => {
    expect(reserveOf(gland, { leastGap: mm(6.6), gapAtThreadEnd: null })).toEqual({ reserve: 6.6 - 3, limitedBy: 'gap' })
  })

  it('ends where the nut runs out of thread, when that comes first: 6.6 - 5 = 1.6', () => {
    expect(reserveOf(gland, { leastGap: mm(6.6), gapAtThreadEnd: mm(5) })).toEqual({ reserve: 6.6 - 5, limitedBy: 'thread' })
  })

  it('is never more than the nose can give: 20 - 3.2 = 16.8 of a gap of 30', () => {
    expect(reserveOf(gland, { leastGap: mm(30), gapAtThreadEnd: null })).toEqual({ reserve: 20 - 3.2, limitedBy: 'nose' })
    expect(reserveOf({ ...gland, noseLength: null }, { leastGap: mm(30), gapAtThreadEnd: null })).toMatchObject({
      limitedBy: 'gap',
    })
  })

  it('is not known without a gap', () => {
    expect(reserveOf(gland, { leastGap: null, gapAtThreadEnd: mm(5) })).toBeNull()
  })

  it('is the least of its limits, finite, and falls as the gap falls', () => {
    const gap = fc.double({ min: 0, max: 200, noNaN: true })
    fc.assert(
      fc.property(gap, gap, gap, (one, other, end) => {
        const at = (leastGap: number) => reserveOf(gland, { leastGap: mm(leastGap), gapAtThreadEnd: mm(end) })!.reserve
        expect(Number.isFinite(at(one))).toBe(true)
        expect(at(one)).toBe(Math.min(one - 3, 20 - 3.2, one - end))
        if (one <= other) expect(at(one)).toBeLessThanOrEqual(at(other))
      }),
    )
  })
})

it('the least gap is the smaller side, or the one side that was read', () => {
  expect(leastGapOf(mm(7.4), mm(6.6))).toBe(6.6)
  expect(leastGapOf(null, mm(6.6))).toBe(6.6)
  expect(leastGapOf(mm(7.4), null)).toBe(7.4)
  expect(leastGapOf(null, null)).toBeNull()
})
