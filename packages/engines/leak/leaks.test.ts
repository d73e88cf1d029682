import { days, instant, mm, type Ppmv, ppmv, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import type { Fact, LeakGrade, StandingFact } from '../reserve/facts.ts'
import { leaksOf } from './leaks.ts'

const onDay = (day: number, fact: Fact, id = `d${day}`): StandingFact => ({
  id,
  takenAt: instant(day * 86_400_000),
  standsAs: 'as entered',
  fact,
})
const look = (leak: LeakGrade, netScreening: number | null = null): Fact => ({
  kind: 'leak.seen',
  leak,
  netScreening: netScreening === null ? null : ppmv(netScreening),
})
const nip = (leakBefore: LeakGrade | null = null, leakAfter: LeakGrade | null = null, each = 0.5, other = each): Fact => ({
  kind: 'gland.nipped',
  turnsLeft: turns(each),
  turnsRight: turns(other),
  stem: null,
  leakBefore,
  leakAfter,
})
const repack = (family = 'graphite braid'): Fact => ({
  kind: 'packing.renewed',
  gapLeft: null,
  gapRight: null,
  family,
  rings: 5,
  proved: true,
})
const ring: Fact = { kind: 'ring.added', gapLeft: mm(9), gapRight: mm(9) }
const treat = (leakBefore: LeakGrade | null, leakAfter: LeakGrade | null): Fact => ({
  kind: 'leak.treated',
  treatment: 'grease injected',
  leakBefore,
  leakAfter,
})
const reading = (leak: LeakGrade | null): Fact => ({
  kind: 'reading.taken',
  gapLeft: mm(8),
  gapRight: mm(8),
  threadRemaining: null,
  stem: null,
  leak,
})
const defer = (until: string): Fact => ({ kind: 'repair.deferred', until })
const leaks = (facts: readonly StandingFact[], leakFrom: Ppmv | null = ppmv(10_000), reopensWithin = days(14)) =>
  leaksOf(facts, { leakFrom, reopensWithin })
const told = (...facts: StandingFact[]) => leaks(facts).map(({ id, state }) => `${id} ${state}`)

describe('a leak opens', () => {
  it('with a weep, and not with damp', () => {
    expect(told(onDay(1, look('damp')), onDay(2, look('weep')))).toEqual(['d2 open'])
  })

  it('in a reading, a sighting, before a nip and after one, before a treatment and after one', () => {
    const openers = [reading('drip'), look('drip'), nip('drip'), nip(null, 'drip'), treat('drip', null), treat(null, 'drip')]
    expect(openers.map((opener) => told(onDay(1, opener))[0]?.slice(0, 2))).toEqual(openers.map(() => 'd1'))
  })

  it('with a net screening value of the limit itself, not below it, and with none where nobody screens', () => {
    expect(told(onDay(1, look('dry', 9999)), onDay(2, look('dry', 10_000)))).toEqual(['d2 open'])
    expect(leaks([onDay(1, look('dry', 100_000))], null)).toEqual([])
  })

  it('once: what is seen of it later is the same leak, with its worst', () => {
    const [leak, ...others] = leaks([
      onDay(1, look('weep', 500)),
      onDay(3, reading('run')),
      onDay(4, look('drip', 20_000)),
      onDay(5, look('weep', 700)),
    ])
    expect(others).toEqual([])
    expect(leak).toMatchObject({ id: 'd1', worst: 'run', worstScreening: 20_000, openedAt: 86_400_000 })
    expect(leaks([onDay(1, look('run', 900)), onDay(2, look('weep', 30))])).toMatchObject([{ worst: 'run', worstScreening: 900 }])
    expect(leak?.looks.map(({ factId, leaks: isLeaking }) => [factId, isLeaking])).toEqual([
      ['d1', true],
      ['d3', true],
      ['d4', true],
      ['d5', true],
    ])
  })

  it('in the packing of the last repack before it, if there was one', () => {
    expect(leaks([onDay(1, look('weep'))])).toMatchObject([{ packedAt: null, family: null }])
    const facts = [onDay(0, repack('flax')), onDay(1, repack('aramid braid')), onDay(2, look('weep')), onDay(3, repack('flax'))]
    expect(leaks(facts)).toMatchObject([{ packedAt: 86_400_000, family: 'aramid braid' }])
  })

  it('not with an entry that does not say', () => {
    expect(leaks([onDay(1, reading(null)), onDay(2, nip()), onDay(3, { kind: 'visit.missed' })])).toEqual([])
  })
})

describe('an attempt', () => {
  it('is a nip, a ring, a repack or a treatment while the leak is open', () => {
    const facts = [nip(), look('weep'), nip(), ring, treat(null, null), repack(), look('dry'), nip()]
    const [leak] = leaks(facts.map((fact, day) => onDay(day, fact)))
    expect(leak?.attempts.map(({ factId, by }) => `${factId} ${by}`)).toEqual(['d2 nip', 'd3 ring', 'd4 treatment', 'd5 repack'])
    expect(leak?.firstAttemptAt).toBe(2 * 86_400_000)
  })

  it('is no slackening, and no turn one way on one side and back on the other', () => {
    expect(told(onDay(1, look('weep')), onDay(2, nip(null, null, -0.5)), onDay(3, nip(null, null, 0.5, -0.5)))).toEqual([
      'd1 open',
    ])
  })

  it('leaves the leak attempted until somebody looks', () => {
    expect(told(onDay(1, look('weep')), onDay(2, nip()))).toEqual(['d1 attempted'])
    expect(told(onDay(1, look('weep')), onDay(2, nip()), onDay(3, look('weep')))).toEqual(['d1 open'])
  })

  it('stands between the look before it and the look after it, all in one fact', () => {
    expect(told(onDay(1, nip('drip')))).toEqual(['d1 attempted'])
    expect(told(onDay(1, nip('drip', 'weep')))).toEqual(['d1 open'])
    expect(told(onDay(1, treat('drip', null)))).toEqual(['d1 attempted'])
    expect(told(onDay(1, treat('drip', 'dry')))).toEqual(['d1 verified'])
    expect(leaks([onDay(1, nip(null, 'weep'))])).toMatchObject([{ attempts: [], state: 'open' }])
  })
})

describe('a leak is seen dry', () => {
  it('by a look that does not leak, which belongs to it; later dry looks do not', () => {
    const [leak] = leaks([onDay(1, look('weep')), onDay(2, nip('weep', 'damp')), onDay(3, look('dry'))])
    expect(leak).toMatchObject({ state: 'verified', verified: { factId: 'd2', at: 2 * 86_400_000 } })
    expect(leak?.looks.map(({ factId }) => factId)).toEqual(['d1', 'd2', 'd2'])
  })

  it('also where nobody did anything: it stopped by itself', () => {
    expect(leaks([onDay(1, look('weep')), onDay(9, look('dry'))])).toMatchObject([{ state: 'verified', attempts: [] }])
  })

  it('not by a glance where a meter opened it, but by a meter below the limit', () => {
    const opened = [onDay(1, look('dry', 12_000)), onDay(2, nip())]
    expect(told(...opened, onDay(3, look('dry')))).toEqual(['d1 attempted'])
    expect(told(...opened, onDay(3, look('dry', 10_000)))).toEqual(['d1 open'])
    expect(told(...opened, onDay(3, look('dry', 9999)))).toEqual(['d1 verified'])
  })

  it('not by a glance either where eyes opened it and a meter alone saw it go on', () => {
    const facts = [onDay(1, look('weep')), onDay(2, look('dry', 12_000)), onDay(3, look('dry'))]
    expect(told(...facts)).toEqual(['d1 open'])
    expect(told(...facts, onDay(4, look('dry', 30)))).toEqual(['d1 verified'])
  })

  it('by a glance where eyes opened it, a meter at hand or not', () => {
    expect(told(onDay(1, look('weep', 12_000)), onDay(2, look('dry')))).toEqual(['d1 verified'])
    expect(told(onDay(1, look('weep')), onDay(2, look('dry', 12_000)))).toEqual(['d1 open'])
  })
})

describe('a leak is the same leak again', () => {
  const dry = [onDay(1, look('weep')), onDay(2, nip('weep', 'dry'))]

  it('up to the last of the days within which it reopens', () => {
    const [leak, ...others] = leaks([...dry, onDay(16, look('drip'))])
    expect(others).toEqual([])
    expect(leak).toMatchObject({ id: 'd1', state: 'open', verified: null, worst: 'drip', reopenedAt: [16 * 86_400_000] })
    expect(leak?.spells).toEqual([
      { from: 86_400_000, to: 2 * 86_400_000 },
      { from: 16 * 86_400_000, to: null },
    ])
  })

  it('no later than that', () => expect(told(...dry, onDay(16.01, look('drip')))).toEqual(['d1 verified', 'd16.01 open']))

  it('not after a repack, but after one while it was still open', () => {
    expect(told(...dry, onDay(3, repack()), onDay(4, look('drip')))).toEqual(['d1 verified', 'd4 open'])
    expect(told(onDay(1, look('weep')), onDay(2, repack()), onDay(3, look('dry')), onDay(4, look('drip')))).toEqual(['d1 open'])
  })

  it('again after a new leak was seen dry: the repack before that one no longer counts', () => {
    const facts = [...dry, onDay(3, repack()), onDay(4, nip('drip', 'dry')), onDay(5, look('weep'))]
    expect(told(...facts)).toEqual(['d1 verified', 'd4 open'])
  })

  it('as often as it comes, also in the same moment', () => {
    const facts = [onDay(1, look('weep')), onDay(2, treat('dry', 'weep'), 'a'), onDay(2, look('dry'), 'b'), onDay(3, look('run'))]
    expect(leaks(facts)).toMatchObject([
      { id: 'd1', reopenedAt: [2 * 86_400_000, 3 * 86_400_000], spells: [{}, { from: 2 * 86_400_000, to: 2 * 86_400_000 }, {}] },
    ])
  })
})

it('a decision to put the repair off counts while the leak is open; the last one stands', () => {
  const facts = [
    onDay(0, defer('2026-01-01')),
    onDay(1, look('weep')),
    onDay(2, defer('2026-02-01')),
    onDay(3, defer('2026-03-01')),
  ]
  expect(leaks(facts)[0]?.deferred).toEqual({ factId: 'd3', at: 3 * 86_400_000, until: '2026-03-01' })
  const afterwards = [onDay(1, nip('weep', 'dry')), onDay(2, defer('2026-02-01'))]
  expect(leaks(afterwards)[0]?.deferred).toBeNull()
})
