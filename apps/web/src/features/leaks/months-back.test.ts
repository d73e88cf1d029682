import { expect, it } from 'vitest'
import { monthsBack } from './months-back.ts'

// On the 31st: a month back of it is a shorter one.
const today = new Date(2026, 2, 31)

it('the months of the bars go back two years from the one that runs', () => {
  const months = monthsBack(today)
  expect([months.length, months[0], months[1], months.at(-1)]).toEqual([25, '2026-03', '2026-02', '2024-03'])
})

it('one that is older stays to be chosen, and none stands twice', () => {
  expect(monthsBack(today, '2020-01').at(-1)).toBe('2020-01')
  expect(monthsBack(today, '2026-01')).toHaveLength(25)
})
