import { instant, mm, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import type { Fact, LeakGrade, StandingFact } from '../reserve/facts.ts'
import { visitsOf } from './visits.ts'

const onDay = (day: number, fact: Fact): StandingFact => ({
  id: `${day}`,
  takenAt: instant(day * 86_400_000),
  standsAs: 'as entered',
  fact,
})
const look = (leak: LeakGrade): Fact => ({ kind: 'leak.seen', leak, netScreening: null })
const nip = (leakBefore: LeakGrade | null, leakAfter: LeakGrade | null = 'dry'): Fact => ({
  kind: 'gland.nipped',
  turnsLeft: turns(0.5),
  turnsRight: turns(0.5),
  stem: null,
  leakBefore,
  leakAfter,
})
const repack: Fact = {
  kind: 'packing.renewed',
  gapLeft: mm(12),
  gapRight: mm(12),
  family: 'graphite braid',
  rings: 5,
  proved: true,
}
const spans = (...facts: StandingFact[]) => visitsOf(facts).spans.map(({ from, to, leaked }) => [from, to, leaked])

describe('visits of a gland', () => {
  it('run from the repack through dry looks to the leak, and begin anew at the nip', () => {
    expect(
      spans(onDay(0, repack), onDay(30, look('dry')), onDay(60, look('damp')), onDay(90, nip('weep')), onDay(120, look('dry'))),
    ).toEqual([
      [0, 30, false],
      [30, 60, false],
      [60, 90, true],
      [0, 30, false],
    ])
  })

  it('say nothing before the first adjustment, nor while a leak goes on', () => {
    expect(spans(onDay(0, look('dry')), onDay(10, look('run')))).toEqual([])
    expect(spans(onDay(0, repack), onDay(10, look('drip')), onDay(20, look('run')), onDay(30, look('dry')))).toEqual([
      [0, 10, true],
    ])
    expect(spans(onDay(0, nip('weep', 'weep')), onDay(10, look('weep')))).toEqual([])
  })

  it('count no missed visit, no entry that does not say, and no span of no length', () => {
    const reading: Fact = {
      kind: 'reading.taken',
      gapLeft: mm(8),
      gapRight: mm(8),
      threadRemaining: null,
      stem: null,
      leak: null,
    }
    expect(spans(onDay(0, repack), onDay(0, look('dry')), onDay(5, { kind: 'visit.missed' }), onDay(6, reading))).toEqual([])
  })

  it('know how long after the adjustment the last look was', () => {
    expect(visitsOf([onDay(0, repack), onDay(40, look('dry'))]).ageAtLastLook).toBe(40)
    expect(visitsOf([onDay(0, look('dry'))]).ageAtLastLook).toBeNull()
  })
})
