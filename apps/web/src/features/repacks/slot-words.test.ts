import type { RepackSlot } from '@glandkeeper/contract/repack-plans'
import { describe, expect, it } from 'vitest'
import { firstDayInWords, fortnightInWords, slotNamed, tradesInWords, usedInWords } from './slot-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')
const hours = (fitting: number, scaffolding: number, isolating: number) =>
  ({ fitting, scaffolding, isolating }) as RepackSlot['hours']

describe('a slot in words', () => {
  const slots = [{ slotId: 'outage:a', kind: 'outage', name: 'Summer stop' } as unknown as RepackSlot]

  it('is an outage by its name and a fortnight by its weeks, over the end of a year too', () => {
    expect(slotNamed(slots, 'outage:a')).toBe('Summer stop')
    expect(slotNamed(slots, 'fortnight:2027-06-07')).toBe('weeks 23 and 24, from 7 Jun 2027')
    expect(fortnightInWords('2026-12-28')).toBe('weeks 53 and 1, from 28 Dec 2026')
  })

  it('has words where it waits, and where the outage is not in the plan', () => {
    expect(slotNamed(slots, null)).toBe('to wait')
    expect(slotNamed(slots, 'outage:b')).toBe('an outage this plan does not have')
  })
})

describe('a first day', () => {
  it.each([
    ['2027-06-09', '2027-06-09', '2027-06-09', '9 Jun 2027'],
    ['2027-06-02', '2027-06-09', '2027-06-23', '9 Jun 2027, between 2 and 23 Jun'],
    ['2027-05-28', '2027-06-09', '2027-06-23', '9 Jun 2027, between 28 May and 23 Jun'],
    ['2026-12-28', '2027-01-04', '2027-01-11', '4 Jan 2027, between 28 Dec 2026 and 11 Jan 2027'],
  ])('between %s and %s, %s', (earliestOn, likelyOn, latestOn, says) => {
    expect(firstDayInWords({ earliestOn, likelyOn, latestOn })).toBe(says)
  })
})

describe('hours', () => {
  it('name the trades that have something to do', () => {
    expect(plain(tradesInWords(hours(4, 0, 1.5)))).toBe('fitting 4 h, isolating 1.5 h')
    expect(tradesInWords(hours(0, 0, 0))).toBe('no hours')
  })

  it('are used of those there', () => {
    expect(plain(usedInWords({ used: hours(62.25, 0, 0), hours: hours(1280, 0, 0) }, 'fitting'))).toBe('62.3 of 1,280 h')
  })
})
