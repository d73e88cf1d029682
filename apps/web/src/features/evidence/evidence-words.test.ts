import { MOST_ENTRIES_IN_EXPORT } from '@glandkeeper/contract/evidence'
import { describe, expect, it, test } from 'vitest'
import {
  countInWords,
  inGroups,
  keyFileName,
  restsOnInWords,
  secondsInWords,
  sinceInWords,
  sizeInWords,
  verdictInWords,
} from './evidence-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')

test('a choice can be taken out up to the most a file holds, and says why beyond it and at none', () => {
  expect(countInWords(1)).toEqual({ words: '1 entry.', mayTake: true })
  expect(countInWords(MOST_ENTRIES_IN_EXPORT)).toEqual({ words: '100,000 entries.', mayTake: true })
  expect(countInWords(MOST_ENTRIES_IN_EXPORT + 1).mayTake).toBe(false)
  expect(countInWords(MOST_ENTRIES_IN_EXPORT + 1).words).toMatch(/^100,001 entries: too many .* at most 100,000\. Choose/)
  expect(countInWords(0).mayTake).toBe(false)
  expect(countInWords(0).words).toMatch(/^No entry fits/)
})

test('a fingerprint is read in groups of four letters, and nothing of it is lost', () => {
  const fingerprint = '0123456789abcdef'.repeat(4)
  expect(inGroups(fingerprint)).toHaveLength(16)
  expect(inGroups(fingerprint).join('')).toBe(fingerprint)
  expect(inGroups('')).toEqual([])
  expect(keyFileName(fingerprint)).toBe('glandkeeper-key-01234567.pem')
})

test('times and sizes keep their units at every size', () => {
  expect([0.02, 0.1, 4.24, 59.94, 59.96, 125, 3600].map(secondsInWords).map(plain)).toEqual([
    'under 0.1 s',
    '0.1 s',
    '4.2 s',
    '59.9 s',
    '1 min',
    '2 min 5 s',
    '60 min',
  ])
  expect([1, 999, 1000, 999_999, 1_250_000].map(sizeInWords).map(plain)).toEqual([
    '1 byte',
    '999 bytes',
    '1 kB',
    '1000 kB',
    '1.3 MB',
  ])
})

describe('a proof in words', () => {
  const proof = { isWhole: true, entries: 12_345, position: null, seals: 3 }

  it('says that the record is whole, and what that rests on', () => {
    expect(verdictInWords(proof)).toBe('The record is whole')
    expect(restsOnInWords(proof)).toBe(
      'All 12,345 entries stand as they were written, each joined to the one before it. All 3 heads that were signed earlier still stand in it.',
    )
    expect(restsOnInWords({ ...proof, entries: 1, seals: 1 })).toBe(
      'Its one entry stands as it was written. The head that was signed earlier still stands in it.',
    )
    expect(restsOnInWords({ ...proof, seals: 0 })).not.toMatch(/signed/)
  })

  it('names the place of a break', () => {
    expect(verdictInWords({ ...proof, isWhole: false, position: 1234 })).toBe('The record is broken at entry 1,234')
    expect(verdictInWords({ ...proof, isWhole: false })).toBe('The record is broken')
  })

  it('claims nothing of a record without entries', () => {
    expect(verdictInWords({ ...proof, entries: 0, seals: 0 })).toBe('There is no entry yet')
    expect(restsOnInWords({ ...proof, entries: 0, seals: 0 })).toMatch(/^Nothing has been entered/)
  })

  it('says how many entries came after it', () => {
    expect(sinceInWords(10, 10)).toBeNull()
    expect(sinceInWords(10, 11)).toBe('1 entry has come since, and is not proved yet.')
    expect(sinceInWords(10, 1210)).toBe('1,200 entries have come since, and are not proved yet.')
  })
})
