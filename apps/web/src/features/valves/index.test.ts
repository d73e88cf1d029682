import { expect, test } from 'vitest'
import { howSure, usedUpWhen } from './index.ts'

const today = '2026-05-04'

test.each([
  ['2027-03-03', '2027-08-20', 'Mar to Aug 2027', '3 Mar to 20 Aug 2027', 'four times in five'],
  ['2026-11-03', '2027-02-20', 'Nov 2026 to Feb 2027', '3 Nov 2026 to 20 Feb 2027', 'four times in five'],
  ['2027-03-03', '2027-03-20', 'Mar 2027', '3 Mar to 20 Mar 2027', 'four times in five'],
  ['2027-03-03', null, 'after Mar 2027', 'after 3 Mar 2027', 'nine times in ten'],
  [null, null, 'beyond twenty years', 'beyond twenty years', 'nine times in ten'],
  ['2026-05-04', '2026-08-20', 'by Aug 2026', 'by 20 Aug 2026', 'nine times in ten'],
  ['2026-02-01', '2026-05-04', 'by now', 'by now', 'nine times in ten'],
])('from %s to %s is said "%s"', (early, late, inMonths, inDays, sure) => {
  expect(usedUpWhen({ early, late, today, grain: 'month' })).toBe(inMonths)
  expect(usedUpWhen({ early, late, today, grain: 'day' })).toBe(inDays)
  expect(howSure({ early, late, today })).toBe(sure)
})
