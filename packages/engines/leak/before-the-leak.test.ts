import { days, instant, mm, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import type { Gland } from '../gland/gland.ts'
import type { Fact, LeakGrade, StandingFact } from '../reserve/facts.ts'
import { glandHistory } from '../reserve/gland-history.ts'
import { beforeTheLeak } from './before-the-leak.ts'
import { leaksOf } from './leaks.ts'

/** M12: pitch 1.75 mm, so that half a turn takes 0.875 mm. */
const gland: Gland = {
  boxBore: mm(45),
  stemDiameter: mm(28),
  boxDepth: mm(48),
  noseLength: mm(40),
  leastEngagement: mm(3.2),
  keepClear: mm(3),
  studThread: 'M12',
}
const onDay = (day: number, fact: Fact, id = `d${day}`): StandingFact => ({
  id,
  takenAt: instant(day * 86_400_000),
  standsAs: 'as entered',
  fact,
})
const repack = (gap: number | null, family = 'graphite braid'): Fact => ({
  kind: 'packing.renewed',
  gapLeft: gap === null ? null : mm(gap),
  gapRight: gap === null ? null : mm(gap),
  family,
  rings: 5,
  proved: true,
})
const nip = (
  each = 0.5,
  leakBefore: LeakGrade | null = null,
  leakAfter: LeakGrade | null = null,
  stem: string | null = null,
): Fact => ({
  kind: 'gland.nipped',
  turnsLeft: turns(each),
  turnsRight: turns(each),
  stem,
  leakBefore,
  leakAfter,
})
const look = (leak: LeakGrade): Fact => ({ kind: 'leak.seen', leak, netScreening: null })
const reading = (gap: number, leak: LeakGrade | null = null): Fact => ({
  kind: 'reading.taken',
  gapLeft: mm(gap),
  gapRight: mm(gap),
  threadRemaining: null,
  stem: null,
  leak,
})
const before = (facts: readonly StandingFact[], leakId: string) => {
  const { moments, lives } = glandHistory(gland, facts)
  const leaks = leaksOf(facts, { leakFrom: null, reopensWithin: days(0) })
  const found = beforeTheLeak({ moments, lives, leaks, leakId })
  if (!found.ok) throw new Error(found.problem.code)
  return found
}

describe('nips before a leak', () => {
  const nipsOn = (...nipDays: number[]) => nipDays.map((day) => onDay(day, nip(0.1)))

  it('come closer: gaps 40, 30, 20, 10, 6 halve to medians 35 and 8, the middle one left out', () => {
    const { nipGaps, nipsCloser } = before([...nipsOn(0, 40, 70, 90, 100, 106), onDay(107, look('drip'))], 'd107')
    expect(nipGaps).toEqual([40, 30, 20, 10, 6])
    expect(nipsCloser).toEqual({ first: 35, last: 8, ratio: 8 / 35 })
  })

  it('are halved to the middle one of each half, in whatever order: 40, 10, 30 to 30, and 5, 9, 7 to 7', () => {
    const facts = [...nipsOn(0, 40, 50, 80, 85, 94, 101), onDay(102, look('drip'))]
    expect(before(facts, 'd102').nipsCloser).toMatchObject({ first: 30, last: 7 })
  })

  it('need four gaps, and a first half that took time', () => {
    expect(before([...nipsOn(0, 40, 70, 90), onDay(91, look('drip'))], 'd91').nipsCloser).toBeNull()
    expect(before([...nipsOn(0, 40, 70, 90, 100), onDay(101, look('drip'))], 'd101').nipsCloser).toMatchObject({ ratio: 15 / 35 })
    const atOnce = ['a', 'b', 'c'].map((id) => onDay(0, nip(0.1), id))
    expect(before([...atOnce, ...nipsOn(5, 9), onDay(10, look('drip'))], 'd10').nipsCloser).toBeNull()
  })

  it('are those of this packing, before the leak, with turns that pressed', () => {
    const facts = [
      ...nipsOn(0, 10),
      onDay(20, repack(20)),
      ...nipsOn(30),
      onDay(35, nip(-0.2)),
      ...nipsOn(45),
      onDay(50, nip(0.1, 'drip')),
      ...nipsOn(60),
      onDay(70, repack(20)),
    ]
    expect(before(facts, 'd50').nipGaps).toEqual([15])
  })
})

describe('travel before a leak', () => {
  // A quarter is 91.3125 days: the leak on day 200 looks back to day 108.6875.
  const facts = [
    onDay(0, repack(20)),
    onDay(60, nip()),
    onDay(120, nip()),
    onDay(150, nip()),
    onDay(180, nip()),
    onDay(200, look('drip')),
  ]

  it('3 nips of 0.875 mm in 3 months, 1 in the 108.6875 days before', () => {
    const { travelPerMonth } = before(facts, 'd200')
    expect(travelPerMonth.threeMonthsBefore).toBeCloseTo((3 * 0.875) / 3, 9)
    expect(travelPerMonth.lifeBefore).toBeCloseTo(0.875 / (108.6875 / 30.4375), 9)
  })

  it('is counted over months without a leak: 20 days of an earlier one are left out', () => {
    const leaked = [...facts.slice(0, 4), onDay(155, look('drip')), onDay(175, look('dry')), ...facts.slice(4)]
    const seen = before(leaked, 'd200')
    expect(seen.travelPerMonth.threeMonthsBefore).toBeCloseTo((3 * 0.875) / (71.3125 / 30.4375), 9)
    expect(seen.earlierLeaks).toBe(1)
  })

  it('is the net of readings that scatter; a top-up ring gives back none', () => {
    const topped: StandingFact[] = [
      onDay(0, repack(20)),
      onDay(120, reading(19)),
      onDay(130, reading(19.4)),
      onDay(140, { kind: 'ring.added', gapLeft: mm(25), gapRight: mm(25) }),
      onDay(160, reading(24)),
      onDay(200, look('drip')),
    ]
    expect(before(topped, 'd200').travelPerMonth).toEqual({
      threeMonthsBefore: expect.closeTo((0.6 + 1) / 3, 9) as number,
      lifeBefore: 0,
    })
  })

  it('has no rate in less than a month', () => {
    const young = [onDay(170, repack(20)), onDay(180, nip()), onDay(200, look('drip'))]
    expect(before(young, 'd200').travelPerMonth).toEqual({ threeMonthsBefore: null, lifeBefore: null })
    const month = [onDay(100, repack(20)), ...facts.slice(2)]
    expect(before(month, 'd200').travelPerMonth.threeMonthsBefore).toBeCloseTo(0.875, 9)
    expect(before(month, 'd200').travelPerMonth.lifeBefore).toBeNull()
    expect(before([onDay(0, repack(null)), onDay(60, nip()), onDay(200, look('drip'))], 'd200').travelPerMonth).toEqual({
      threeMonthsBefore: null,
      lifeBefore: null,
    })
  })

  it('left is what there was before the nip that followed the look, and what a reading then says', () => {
    expect(before(facts, 'd200').travelLeft).toBe(17 - 4 * 0.875)
    expect(before([onDay(0, repack(20)), onDay(9, nip(1, 'drip', 'dry'))], 'd9').travelLeft).toBe(17)
    expect(before([onDay(0, repack(20)), onDay(9, nip(1, null, 'drip'))], 'd9').travelLeft).toBe(15.25)
    expect(before([onDay(0, repack(20)), onDay(9, reading(12, 'drip'))], 'd9').travelLeft).toBe(9)
    expect(before([onDay(9, look('drip'))], 'd9').travelLeft).toBeNull()
  })
})

describe('the packing of a leak', () => {
  const facts = [
    onDay(0, repack(20, 'flax')),
    onDay(10, look('drip')),
    onDay(100, repack(20, 'aramid braid')),
    onDay(101, look('dry')),
    onDay(130, nip(0.5, 'drip', 'dry')),
    onDay(140, look('weep')),
  ]

  it('has an age, a family, a life before it, and leaks before this one', () => {
    expect(before(facts, 'd140')).toMatchObject({
      packingAge: 40,
      lifeBeforeLasted: 100,
      family: 'aramid braid',
      familyBefore: 'flax',
      earlierLeaks: 1,
    })
    expect(before(facts, 'd10')).toMatchObject({ packingAge: 10, lifeBeforeLasted: null, familyBefore: null, earlierLeaks: 0 })
  })

  it('is not known before the first repack, nor how long that life was', () => {
    const nobodyKnows = { packingAge: null, family: null, familyBefore: null, lifeBeforeLasted: null }
    const known = [onDay(-9, look('dry')), ...facts]
    expect(before([onDay(-9, look('drip')), ...facts], 'd-9')).toMatchObject(nobodyKnows)
    expect(before(known, 'd10')).toMatchObject({ family: 'flax', familyBefore: null, lifeBeforeLasted: null })
  })

  it('was felt at the stem: stiff in three months before or at that visit, in this life', () => {
    const felt = (stem: string) => nip(0.1, null, null, stem)
    const stiff = [
      onDay(0, felt('stiff')),
      onDay(100, repack(20)),
      onDay(102, felt('stiff')),
      onDay(150, felt('seized')),
      onDay(160, felt('free')),
      onDay(200, nip(0.1, 'drip', 'dry', 'stiff')),
      onDay(201, felt('stiff')),
    ]
    expect(before(stiff, 'd200').stiffStems.map(({ factId, stem }) => `${factId} ${stem}`)).toEqual(['d150 seized', 'd200 stiff'])
    expect(before([onDay(0, felt('stiff')), onDay(10, repack(20)), onDay(20, look('drip'))], 'd20').stiffStems).toEqual([])
  })
})

it('refuses an entry that opened no leak', () => {
  const { moments, lives } = glandHistory(gland, [onDay(0, look('dry'))])
  expect(beforeTheLeak({ moments, lives, leaks: [], leakId: 'd0' })).toMatchObject({
    ok: false,
    problem: { code: 'leak/unknown', field: 'leakId' },
  })
})
