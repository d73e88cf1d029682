import type { RepackPlan, RepackSlot } from '@glandkeeper/contract/repack-plans'
import { describe, expect, it } from 'vitest'
import {
  costInWords,
  differenceInWords,
  expectedOfPlanInWords,
  percentInWords,
  placesInWords,
  qualityInWords,
} from './plan-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')
const slot = (kind: RepackSlot['kind'], repacks: number) => ({ kind, repacks }) as RepackSlot
const totals = (valves: number, waits: number) =>
  ({ valves, waits, expectedOut: 2.345, expectedLeaks: 5.1, cost: { total: 100 } }) as unknown as RepackPlan['totals']

describe('what a plan comes to', () => {
  it('is counted by place', () => {
    const slots = [slot('outage', 30), slot('fortnight', 21), slot('outage', 4)]
    expect(placesInWords({ totals: totals(61, 6), slots })).toBe(
      '61 valves to repack: 34 in outages, 21 while the plant runs, 6 wait.',
    )
    expect(placesInWords({ totals: totals(1, 1), slots: [] })).toBe(
      '1 valve to repack: none in outages, none while the plant runs, 1 waits.',
    )
  })

  it('says so where no valve needs a repack', () => {
    expect(placesInWords({ totals: totals(0, 0), slots: [] })).toMatch(/^No valve is likely enough/)
  })

  it('names what is to be expected before', () => {
    expect(expectedOfPlanInWords(totals(61, 6))).toBe(
      'Before their repack 2.3 of them are to be expected to run out of travel, and 5.1 leaks.',
    )
  })
})

describe('how good a plan is', () => {
  const quality = (gap: number, greedyCost: number, isCutShort = false) =>
    plain(qualityInWords({ gap, greedyCost, totals: totals(1, 0), isCutShort } as Parameters<typeof qualityInWords>[0]))

  it.each([
    [0.002, 114, 'At most 0.2 % above the least that is possible; one after the other it would cost 14 % more.'],
    [0, 100, 'No plan of these costs less; one after the other costs the same.'],
    [0.0004, 100.02, 'No plan of these costs less; one after the other costs the same.'],
  ])('a gap of %d and %d one after the other', (gap, greedy, says) => {
    expect(quality(gap, greedy)).toBe(says)
  })

  it('says that the time ran out', () => {
    expect(quality(0.12, 100, true)).toContain('At most 12 % above')
    expect(quality(0.12, 100, true)).toContain('ended by its time limit.')
  })
})

describe('figures of a plan', () => {
  it('are money in whole figures, and points with two decimals', () => {
    expect(costInWords(12_345.6, 'money')).toBe('12,346')
    expect(plain(costInWords(0.996, 'chance'))).toBe('1.00 point')
    expect(plain(costInWords(12, 'chance'))).toBe('12.00 points')
  })

  it('are percent with a decimal where it says something', () => {
    expect([0.0023, 0.0999, 0.14].map((share) => plain(percentInWords(share)))).toEqual(['0.2 %', '10.0 %', '14 %'])
  })

  it('differ with a sign, and in words only where it shows', () => {
    expect([-1.44, 0.04, 1234].map((difference) => differenceInWords(difference, 1))).toEqual(['−1.4', '', '+1,234.0'])
  })
})
