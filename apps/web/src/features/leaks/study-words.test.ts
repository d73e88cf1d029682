import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { describe, expect, it } from 'vitest'
import {
  afterOutagesInWords,
  chanceInWords,
  changeInWords,
  luckInWords,
  meanInWords,
  percent,
  periodOf,
  rateWithLimits,
} from './study-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')

it.each([
  [0.0025, '1 in 400 by chance'],
  [0.00247, '1 in 400 by chance'],
  [0.000_081, '1 in 12,000 by chance'],
  [0.34, '1 in 3 by chance'],
  [0.9, '1 in 1 by chance'],
  [1e-6, '1 in 1,000,000 by chance'],
  [4e-9, 'less than 1 in a million by chance'],
  [0, 'less than 1 in a million by chance'],
])('a chance of %d is %s', (chance, words) => expect(chanceInWords(chance)).toBe(words))

it('of 420 valves alike about four would show 1 in 100, of 40 about four 1 in 10', () => {
  expect(luckInWords({ valves: 420, aboveInAll: 31 })).toBe(
    '31 valves lie above the limit of the mean. Of so many valves some do by chance alone: were all 420 alike, up to 4 would still show a chance of 1 in 100 or less. Look first where it is least.',
  )
  expect(luckInWords({ valves: 40, aboveInAll: 1 })).toContain(
    '1 valve lies above the limit of the mean. Of so many valves some do by chance alone: were all 40 alike, up to 4 would still show a chance of 1 in 10',
  )
})

it('a rate has its limits beside it, and is not said where nothing was watched', () => {
  expect(rateWithLimits({ rate: 9.96 as never, lower: 4.2 as never, upper: 18.4 as never })).toBe('10.0 (4.2 to 18)')
  expect(rateWithLimits({ rate: 1234 as never, lower: null, upper: 2000 as never })).toBe('1,234')
  expect(rateWithLimits({ rate: null, lower: null, upper: null })).toBe('not watched')
})

it('means and shares keep the figures that tell them apart', () => {
  expect([0.041, 1.26, 1234.5].map(meanInWords)).toEqual(['0.04', '1.3', '1,235'])
  expect([0, 0.084, 0.214].map((share) => plain(percent(share)))).toEqual(['0 %', '8.4 %', '21 %'])
})

it('a period that is none is all records', () => {
  expect(periodOf(new URLSearchParams('period=one+year'))).toBe('one year')
  expect(periodOf(new URLSearchParams('period=ages'))).toBe('all')
})

describe('leaks after outages', () => {
  const after = (lower: number, upper: number, given = {}) =>
    plain(
      afterOutagesInWords({
        leaks: 40,
        within: 9,
        share: 0.225,
        lower,
        upper,
        timeShare: 0.12,
        outages: [],
        ...given,
      } as unknown as LeakStudy['afterOutages']),
    )

  it('the share is said beside the share of time, and what that tells', () => {
    expect(after(0.13, 0.38)).toBe(
      '9 of 40 leaks, 23 %, were first seen within thirty days after an outage; 12 % of the time watched lies there. That is more than chance gives: look at what is done to glands in outages.',
    )
    expect(after(0.01, 0.11)).toContain('less than chance would give')
    expect(after(0.1, 0.38)).toContain('No more and no less than chance allows')
  })

  it('without an outage or a leak nothing is compared', () => {
    expect(after(0, 0, { timeShare: 0 })).toBe('No outage has ended while valves were watched.')
    expect(after(0, 0, { share: null, leaks: 0, within: 0 })).toBe('No leak was first seen while valves were watched.')
  })
})

it.each([
  [{ rate: 20, lower: 12, upper: 30 }, { rate: 5, lower: 2, upper: 11 }, 'Fewer leaks since, beyond chance.'],
  [{ rate: 5, lower: 2, upper: 11 }, { rate: 20, lower: 12, upper: 30 }, 'More leaks since, beyond chance.'],
  [{ rate: 20, lower: 12, upper: 30 }, { rate: 8, lower: 3, upper: 13 }, 'No difference that chance could not make.'],
  [{ rate: 20, lower: 12, upper: 30 }, { rate: 25, lower: 14, upper: 40 }, 'No difference that chance could not make.'],
  [{ rate: 20, lower: 12, upper: 30 }, { rate: null, lower: null, upper: null }, 'Watched too little to compare.'],
])('a change of packing from %o to %o: %s', (before, after, words) =>
  expect(changeInWords(before as never, after as never)).toBe(words),
)
