import type { Leak } from '@glandkeeper/contract/leaks'
import { describe, expect, it } from 'vitest'
import {
  doneInWords,
  filterInWords,
  furtherInWords,
  goneInWords,
  isMonthRunning,
  monthSays,
  packingInWords,
  pageInWords,
  spanInWords,
  worstInWords,
  yearsInWords,
} from './leak-words.ts'

const LONDON = 'Europe/London'
const plain = (words: string) => words.replaceAll('\u00a0', ' ')
const named = { areaName: (code: string) => `area ${code}`, outageName: () => 'the October stop' }

describe('a leak in words', () => {
  it.each([
    [{ worst: 'drip', worstScreening: null }, 'drip'],
    [{ worst: null, worstScreening: 12_500.4 }, '12,500 ppmv'],
    [{ worst: 'weep', worstScreening: 700 }, 'weep, 700 ppmv'],
    [{ worst: null, worstScreening: null }, 'not said'],
  ])('the worst of %o is %s', (leak, words) => expect(plain(worstInWords(leak as Leak))).toBe(words))

  it('attempts are counted, with the day of the first by the calendar of the site', () => {
    const firstAttemptAt = '2026-05-04T23:30:00Z'
    expect(doneInWords({ attempts: 0, firstAttemptAt: null }, LONDON)).toBe('nothing yet')
    expect(doneInWords({ attempts: 1, firstAttemptAt }, LONDON)).toBe('1 attempt, on 5 May 2026')
    expect(doneInWords({ attempts: 3, firstAttemptAt }, LONDON)).toBe('3 attempts, the first on 5 May 2026')
  })

  it('one that was treated is not said to be gone until somebody looked', () => {
    expect(goneInWords({ state: 'attempted', verifiedAt: null }, LONDON)).toBe('nobody has looked since')
    expect(goneInWords({ state: 'verified', verifiedAt: '2026-05-04T12:00:00Z' }, LONDON)).toBe('seen gone on 4 May 2026')
    // Seen gone once and back again: the day it was gone says nothing now.
    expect(goneInWords({ state: 'open', verifiedAt: '2026-05-04T12:00:00Z' }, LONDON)).toBe('still leaks as far as known')
  })

  it('how often it came back and until when it was put off are said where there is something to say', () => {
    const quiet = { reopened: 0, isDeferred: false, deferredUntil: null } as Leak
    expect(furtherInWords(quiet)).toEqual([])
    expect(furtherInWords({ ...quiet, reopened: 1 })).toEqual(['came back once'])
    expect(furtherInWords({ ...quiet, reopened: 2, isDeferred: true, deferredUntil: '2026-10-05' })).toEqual([
      'came back 2 times',
      'put off until 5 Oct 2026',
    ])
    expect(furtherInWords({ ...quiet, isDeferred: true })).toEqual(['put off'])
    expect(furtherInWords({ ...quiet, deferredUntil: '2026-10-05' })).toEqual([])
  })

  it('the age of the packing is that on the day the leak was first seen', () => {
    const openedAt = '2026-03-20T08:00:00Z'
    const leak = { family: 'graphite braid', packedAt: '2025-01-05T08:00:00Z', openedAt }
    expect(plain(packingInWords(leak))).toBe('graphite braid, 14 months old')
    expect(packingInWords({ ...leak, family: null, packedAt: null })).toBe('packing not known, age not known')
    expect(plain(spanInWords('2026-03-01T08:00:00Z', openedAt))).toBe('19 days')
    expect(plain(spanInWords('2026-03-19T08:00:00Z', openedAt))).toBe('1 day')
    expect(plain(spanInWords('2021-09-19T08:00:00Z', openedAt))).toBe('4.5 years')
  })
})

it.each([
  ['state', 'attempted', 'treated, nobody has looked since'],
  ['area', 'BM', 'in area BM'],
  ['family', 'not known', 'packing not known'],
  ['family', 'graphite braid', 'packed with graphite braid'],
  ['age', '1 to 2 years', 'packing aged 1 to 2 years'],
  ['age', 'not known', 'age of the packing not known'],
  ['month', '2026-03', 'first seen in March 2026'],
  ['afterOutage', 'x', 'first seen within thirty days after the October stop'],
  ['tag', 'BM-3307', 'at BM-3307'],
] as const)('the filter %s=%s reads "%s"', (name, value, words) => expect(filterInWords(name, value, named)).toBe(words))

it('a page of the list says which leaks it shows', () => {
  expect(pageInWords({ skip: 100, shown: 100, total: 1240 })).toBe('101 to 200 of 1,240')
  expect(pageInWords({ skip: 900, shown: 0, total: 12 })).toBe('none of 12')
})

describe('months', () => {
  it('a bar says its month, its leaks and the year before', () => {
    expect(monthSays('2026-03', 1, 4)).toBe('March 2026: 1 leak first seen, 4 in the year before')
    expect(monthSays('2026-03', 0, null)).toBe('March 2026: no leak first seen')
  })

  const months = (...leaks: number[]) => leaks.map((each, index) => ({ month: String(index), leaks: each }))
  const year = (each: number) => Array.from({ length: 12 }, () => each)
  it.each([
    [
      [...year(2), ...year(3), 99],
      '36 leaks were first seen in the last twelve whole months, 12 more than in the twelve before.',
    ],
    [
      [...year(3), ...year(2), 0],
      '24 leaks were first seen in the last twelve whole months, 12 fewer than in the twelve before.',
    ],
    [[...year(0), ...year(0), 5], 'No leak was first seen in the last twelve whole months, as many as in the twelve before.'],
  ])('whole years are compared without the month that runs', (leaks, words) => expect(yearsInWords(months(...leaks))).toBe(words))

  it('less than two years are not compared', () => expect(yearsInWords(months(...year(2), 1))).toBeNull())

  it('the month of today is the one that runs', () => {
    expect(isMonthRunning('2026-03', new Date(2026, 2, 31, 23))).toBe(true)
    expect(isMonthRunning('2026-03', new Date(2026, 3, 1))).toBe(false)
    expect(isMonthRunning('2026-03', new Date(2025, 2, 3))).toBe(false)
  })
})
