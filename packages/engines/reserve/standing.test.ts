import { mm, ratio } from '@glandkeeper/units/quantity'
import { expect, it } from 'vitest'
import { standingOf } from './standing.ts'

it.each([
  [null, null, 'watch'],
  [0, null, 'spent'],
  [-0.5, 0, 'spent'],
  [0.1, null, 'book'],
  [2, 0, 'book'],
  [8, 0.3, 'book'],
  [2.1, null, 'watch'],
  [8, 0.299, 'watch'],
  [4, 0, 'watch'],
  [8, 0.05, 'watch'],
  [4.1, 0.049, 'ample'],
  [4.1, null, 'ample'],
] as const)('%s mm left and a chance of %s to run out before the stop stand at %s', (reserve, chance, standing) => {
  const state = { reserve: reserve === null ? null : mm(reserve), chanceBeforeStop: chance === null ? null : ratio(chance) }
  expect(standingOf(state)).toBe(standing)
})
