import { celsius, type Instant, instant } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { packingLives, type RecordedLife } from './lives.ts'

const day = (count: number): Instant => instant(count * 86_400_000)
const recorded: RecordedLife = {
  valveId: 'a',
  family: 'graphite braid',
  service: 'steam',
  temperature: celsius(260),
  from: day(0),
  to: null,
  endedBy: null,
  lastSeen: day(100),
}
/** Months, back in days. */
const inDays = (lives: readonly RecordedLife[]) =>
  packingLives(lives).lives.map(({ time, ended }) => [Number((time * 30.4375).toFixed(9)), ended])

describe('lives of packings', () => {
  it('worn out on day 80: ended, at 80 days, which are 2.628 months', () => {
    const [life] = packingLives([{ ...recorded, to: day(80), endedBy: 'worn out' }]).lives
    expect(life?.time).toBeCloseTo(2.62834, 5)
    expect(life).toMatchObject({ ended: true, valveId: 'a', family: 'graphite braid', service: 'steam', temperature: 260 })
  })

  it('renewed early is cut short at the repack; still in the box when last seen', () => {
    expect(inDays([{ ...recorded, to: day(80), endedBy: 'renewed early' }])).toEqual([[80, false]])
    expect(inDays([recorded])).toEqual([[100, false]])
    expect(inDays([{ ...recorded, endedBy: 'worn out' }])).toEqual([[100, false]])
  })

  it('taken out and nobody said why is cut short, and counted', () => {
    const found = packingLives([{ ...recorded, to: day(80) }, recorded])
    expect(found.reasonNotKnown).toBe(1)
    expect(found.lives.map(({ ended }) => ended)).toEqual([false, false])
  })

  it('from before the records, or without length, is left out and counted', () => {
    const found = packingLives([
      { ...recorded, from: null },
      { ...recorded, to: day(0), endedBy: 'worn out' },
      { ...recorded, from: day(200) },
      { ...recorded, from: Number.NaN as Instant },
      recorded,
    ])
    expect(found.leftOut).toEqual({ beginningNotKnown: 1, withoutLength: 3 })
    expect(found.lives).toHaveLength(1)
  })

  it('is counted in whole days, one at least', () => {
    expect(inDays([{ ...recorded, lastSeen: day(0.1) }])).toEqual([[1, false]])
    expect(inDays([{ ...recorded, lastSeen: day(9.6) }])).toEqual([[10, false]])
  })
})
