import { instant, mm, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import type { Gland } from '../gland/gland.ts'
import type { Fact, StandingFact } from './facts.ts'
import { glandHistory } from './gland-history.ts'
import { wearLives } from './wear-lives.ts'

const gland: Gland = {
  boxBore: mm(45),
  stemDiameter: mm(28),
  boxDepth: mm(48),
  noseLength: mm(20),
  leastEngagement: mm(3.2),
  keepClear: mm(3),
  studThread: 'M12',
}
const day = (count: number) => instant(count * 86_400_000)
const reading = (gap: number): Fact => ({
  kind: 'reading.taken',
  gapLeft: mm(gap),
  gapRight: mm(gap),
  threadRemaining: null,
  stem: null,
  leak: null,
})
const nip: Fact = {
  kind: 'gland.nipped',
  turnsLeft: turns(0.5),
  turnsRight: turns(0.5),
  stem: null,
  leakBefore: null,
  leakAfter: null,
}
const repack = (gap: number | null): Fact => ({
  kind: 'packing.renewed',
  gapLeft: gap === null ? null : mm(gap),
  gapRight: gap === null ? null : mm(gap),
  family: 'PTFE braid',
  rings: 5,
  proved: true,
})
const ring: Fact = { kind: 'ring.added', gapLeft: mm(10), gapRight: mm(10) }
const lives = (...facts: Fact[]) => {
  const standing: StandingFact[] = facts.map((fact, index) => ({
    id: `${index}`,
    takenAt: day(index),
    standsAs: 'as entered',
    fact,
  }))
  return wearLives(gland, glandHistory(gland, standing))
}

describe('the packing lives of a gland, for the wear model', () => {
  it('begin with a repack, and before the records with the first entry', () => {
    const [first, second] = lives(reading(7), nip, repack(12), reading(11))
    expect(first).toMatchObject({ from: null, to: day(2), family: null, record: { repackedAt: null } })
    expect(second).toMatchObject({ from: day(2), to: null, family: 'PTFE braid', record: { repackedAt: day(2) } })
    expect(second?.record.readings.map(({ reserve }) => reserve)).toEqual([9, 8])
  })

  it('begin anew with a top-up ring, of the same family', () => {
    const [, second, third] = lives(reading(7), repack(12), ring, reading(9))
    expect(second?.to).toBe(day(2))
    expect(third).toMatchObject({ from: day(2), family: 'PTFE braid' })
  })

  it('take what was measured as readings and turns as nips: half a turn of M12 is 0.875 mm', () => {
    const [life] = lives(reading(7), nip, nip, { kind: 'visit.missed' }, reading(5))
    expect(life?.record.readings.map(({ reserve }) => reserve)).toEqual([4, 2])
    expect(life?.record.nips).toEqual([
      { at: day(1), travel: 0.875 },
      { at: day(2), travel: 0.875 },
    ])
    expect(life?.record.step).toBe(0.875)
  })

  it('take no entry for a reading whose gaps nobody read: the level after a nip is worked out', () => {
    const looked: Fact = {
      ...(reading(7) as Extract<Fact, { kind: 'reading.taken' }>),
      gapLeft: null,
      gapRight: null,
      leak: 'dry',
    }
    expect(lives(reading(7), nip, looked)[0]?.record.readings).toHaveLength(1)
  })

  it('know no travel where no gap was ever read, and no life where nothing was entered', () => {
    expect(lives(nip)[0]?.record).toMatchObject({ readings: [], nips: [] })
    expect(lives(repack(null), nip)[0]?.record).toMatchObject({ readings: [], nips: [], repackedAt: day(0) })
    expect(wearLives(gland, { moments: [], lives: [] })).toEqual([])
  })
})
