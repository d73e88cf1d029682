import { addDays, days, instant, mm } from '@glandkeeper/units/quantity'
import { expect, it } from 'vitest'
import { standingOf } from './standing.ts'

const now = instant(Date.UTC(2026, 4, 4))

it.each([
  [null, null, 'watch'],
  [0, null, 'spent'],
  [-0.5, 400, 'spent'],
  [0.1, null, 'book'],
  [2, null, 'book'],
  [8, 60, 'book'],
  [2.1, null, 'watch'],
  [8, 61, 'watch'],
  [4, 4000, 'watch'],
  [8, 180, 'watch'],
  [4.1, 181, 'ample'],
  [4.1, null, 'ample'],
] as const)('%s mm left and %s days on the line stand at %s %s', (reserve, daysLeft, standing) => {
  expect(
    standingOf(
      { reserve: reserve === null ? null : mm(reserve), runsOutAt: daysLeft === null ? null : addDays(now, days(daysLeft)) },
      now,
    ),
  ).toBe(standing)
})
