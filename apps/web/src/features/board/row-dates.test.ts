import type { BoardRow } from '@glandkeeper/contract/board'
import { expect, test } from 'vitest'
import { lookInRow, usedUpInRow } from './row-dates.ts'

const today = '2026-05-04'
const row = {
  reserve: 3.6,
  runsOutEarly: '2027-03-03',
  runsOutOn: '2027-05-04',
  runsOutLate: '2027-08-20',
  chanceBeforeStop: 0.02,
} as BoardRow
const spent = { ...row, reserve: 0 as BoardRow['reserve'] }

test('a forecast is an interval of months and never one day', () => {
  expect(usedUpInRow(row, today)).toBe('Mar to Aug 2027')
  expect(usedUpInRow({ ...row, runsOutLate: null }, today)).toBe('after Mar 2027')
})

test('a spent gland says since when, and one without a forecast nothing', () => {
  expect(usedUpInRow({ ...spent, runsOutOn: '2026-02-11' }, today)).toBe('since Feb 2026')
  expect(usedUpInRow({ ...spent, runsOutOn: null }, today)).toBe('used up')
  expect(usedUpInRow({ ...row, chanceBeforeStop: null }, today)).toBeNull()
})

test.each([
  ['2026-05-04', 'today'],
  ['2026-05-05', 'Tue 5 May'],
  ['2026-05-10', 'Sun 10 May'],
  ['2026-05-11', '11 May'],
  ['2027-01-02', '2 Jan 2027'],
  ['2026-05-03', 'due 3 May'],
  ['2025-12-30', 'due 30 Dec 2025'],
])('a look on %s is said "%s" on 4 May 2026', (on, said) => {
  expect(lookInRow(on, today)).toBe(said)
})
