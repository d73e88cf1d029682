import type { BoardRow } from '@glandkeeper/contract/board'
import { expect, test } from 'vitest'
import { expectedGapAt } from './expected-gap.ts'

const row = {
  gapLeft: 7.4,
  gapRight: 6.6,
  reserve: 3.6,
  runsOutOn: '2028-05-03',
  chanceBeforeStop: 0.02,
} as BoardRow
const today = '2026-05-04'

test('half way to the middle day half the reserve is expected to be gone: 6.6 - 3.6 × 365 / 730 = 4.8 mm', () => {
  const expected = expectedGapAt(row, '2027-05-04', today)
  expect(expected?.gap).toBeCloseTo(4.8, 9)
  expect(expected?.isUsedUp).toBe(false)
})

test('where the middle day comes before the stop it stands at no reserve: 6.6 - 3.6 = 3.0 mm', () => {
  const expected = expectedGapAt({ ...row, runsOutOn: '2026-11-01' }, '2026-11-01', today)
  expect(expected?.gap).toBeCloseTo(3, 9)
  expect(expected?.isUsedUp).toBe(true)
})

test('of a middle day beyond twenty years nothing is expected to be gone', () => {
  expect(expectedGapAt({ ...row, runsOutOn: null }, '2026-11-01', today)?.gap).toBe(6.6)
})

test('a stop of today or before expects what is there', () => {
  expect(expectedGapAt(row, '2026-05-04', today)?.gap).toBe(6.6)
  expect(expectedGapAt(row, '2026-01-04', today)?.gap).toBe(6.6)
})

test('nothing is expected of a gland that is spent, not measured, or not forecast', () => {
  expect(expectedGapAt({ ...row, reserve: 0 as BoardRow['reserve'] }, '2026-11-01', today)).toBeNull()
  expect(expectedGapAt({ ...row, reserve: null }, '2026-11-01', today)).toBeNull()
  expect(expectedGapAt({ ...row, gapLeft: null, gapRight: null }, '2026-11-01', today)).toBeNull()
  expect(expectedGapAt({ ...row, chanceBeforeStop: null }, '2026-11-01', today)).toBeNull()
})
