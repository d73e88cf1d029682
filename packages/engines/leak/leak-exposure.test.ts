import { type Day, days, instant, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import type { Fact, StandingFact } from '../reserve/facts.ts'
import { ageBandOf, exposureByAge } from './exposure-by-age.ts'
import { leakExposure, leakRate } from './leak-exposure.ts'

const at = (day: number) => instant(day * 86_400_000)
const onDay = (day: number, fact: Fact): StandingFact => ({ id: `${day}`, takenAt: at(day), standsAs: 'as entered', fact })
const nip = (each: number): Fact => ({
  kind: 'gland.nipped',
  turnsLeft: turns(each),
  turnsRight: turns(each),
  stem: null,
  leakBefore: null,
  leakAfter: null,
})
const repack: Fact = { kind: 'packing.renewed', gapLeft: null, gapRight: null, family: 'flax', rings: 4, proved: null }
const missed: Fact = { kind: 'visit.missed' }
const leak = (packedOn: number | null, ...spells: [from: number, to: number | null][]) => ({
  openedAt: at(spells[0]?.[0] ?? 0),
  packedAt: packedOn === null ? null : at(packedOn),
  spells: spells.map(([from, to]) => ({ from: at(from), to: to === null ? null : at(to) })),
})
const facts = [onDay(10, missed), onDay(20, nip(0.5)), onDay(30, nip(-0.5)), onDay(40, nip(0.25)), onDay(110, nip(0.5))]

describe('exposure', () => {
  it('runs from the first fact to the end; leaking 5 + 20 days of a leak that came again, and 10 of one still open', () => {
    const leaks = [leak(null, [20, 25], [30, 50]), leak(null, [100, null])]
    const seen = leakExposure({ facts, leaks, from: at(0), to: at(110) })
    expect(seen).toMatchObject({ daysWatched: 100, daysLeaking: 35, daysDry: 65, leaks: 2, nips: 2 })
    expect(seen.nipsPerDryMonth).toBeCloseTo(2 / (65 / 30.4375), 12)
    expect(seen.leaksPerThousandMonths).toBeCloseTo(2000 / (100 / 30.4375), 9)
  })

  it('begins later where asked, with what leaks by then, and counts a leak only where it opened', () => {
    const leaks = [leak(null, [20, 45]), leak(null, [60, 70])]
    expect(leakExposure({ facts, leaks, from: at(40), to: at(60) })).toMatchObject({
      daysWatched: 20,
      daysLeaking: 5,
      leaks: 0,
      nips: 1,
    })
  })

  it('has no rate where less than a day stands below the line', () => {
    const all = leakExposure({ facts, leaks: [leak(null, [10, null])], from: at(10), to: at(10.9) })
    expect(all).toMatchObject({ nipsPerDryMonth: null, leaksPerThousandMonths: null, leaks: 1 })
    const wet = leakExposure({ facts, leaks: [leak(null, [10.5, null])], from: at(10), to: at(60) })
    expect([wet.nipsPerDryMonth, wet.leaksPerThousandMonths === null]).toEqual([null, false])
  })

  it.each([
    ['no fact is known', [], at(0), at(50)],
    ['it ends before the first fact', facts, at(0), at(5)],
    ['it ends before it begins', facts, at(50), at(40)],
  ])('is none where %s', (_, known, from, to) => {
    expect(leakExposure({ facts: known, leaks: [leak(null, [2, null])], from, to })).toMatchObject({
      daysWatched: 0,
      daysLeaking: 0,
      daysDry: 0,
      leaks: 0,
      nips: 0,
    })
  })
})

describe('rate of leaks', () => {
  it('3 in 60,875 days: 3 in 2 thousand months is 1.5; exact limits of 3 are 0.61867 and 8.76727', () => {
    const rate = leakRate({ leaks: 3, days: days(60_875) })
    if (!rate.ok) throw new Error(rate.problem.code)
    expect(rate.rate).toBeCloseTo(1.5, 12)
    expect(rate.lower).toBeCloseTo(0.61867 / 2, 4)
    expect(rate.upper).toBeCloseTo(8.76727 / 2, 4)
  })

  it.each([
    [{ leaks: 1.5, days: days(9) }, 'number/not-a-count', 'leaks'],
    [{ leaks: -1, days: days(9) }, 'number/not-a-count', 'leaks'],
    [{ leaks: 1, days: days(0) }, 'number/not-positive', 'days'],
    [{ leaks: 1, days: NaN as Day }, 'number/not-positive', 'days'],
  ])('refuses %j: %s', (input, code, field) => {
    expect(leakRate(input)).toMatchObject({ ok: false, problem: { code, field } })
  })
})

describe('exposure by the age of the packing', () => {
  const bands = (known: readonly StandingFact[], leaks: readonly ReturnType<typeof leak>[], from: number, to: number) =>
    exposureByAge({ facts: known, leaks, from: at(from), to: at(to) })
      .filter((band) => band.days > 0 || band.leaks > 0)
      .map((band) => [band.band, band.days, band.leaks])

  it('is not known before the first repack, and begins anew with each', () => {
    const known = [onDay(0, missed), onDay(100, repack), onDay(200, repack)]
    const leaks = [leak(null, [50, 60]), leak(100, [110, 120]), leak(100, [190, 195]), leak(200, [230, null])]
    expect(bands(known, leaks, 0, 210 + 22)).toEqual([
      ['first month', 30.4375 + 30.4375, 2],
      ['1 to 6 months', 100 - 30.4375 + (32 - 30.4375), 1],
      ['not known', 100, 1],
    ])
  })

  it('of a packing of eight years fills all bands: 1, 5, 6, 12, 24 and 48 months', () => {
    expect(bands([onDay(0, repack)], [leak(0, [1461, null])], 0, 2922)).toEqual(
      [
        ['first month', 1, 0],
        ['1 to 6 months', 5, 0],
        ['6 to 12 months', 6, 0],
        ['1 to 2 years', 12, 0],
        ['2 to 4 years', 24, 0],
        ['over 4 years', 48, 1],
      ].map(([band, months, leaks]) => [band, Number(months) * 30.4375, leaks]),
    )
  })

  it('counts only what is watched: from the middle of a band to the middle of another, no repack after it', () => {
    expect(bands([onDay(0, repack), onDay(60, repack)], [leak(0, [5, 6])], 10, 40)).toEqual([
      ['first month', 20.4375, 0],
      ['1 to 6 months', 9.5625, 0],
    ])
  })

  it('the end of a band belongs to the next', () => {
    expect([0, 30.43, 30.4375, 1460.9, 1461].map((age) => ageBandOf(days(age)))).toEqual([
      'first month',
      'first month',
      '1 to 6 months',
      '2 to 4 years',
      'over 4 years',
    ])
    expect(ageBandOf(null)).toBe('not known')
  })
})
