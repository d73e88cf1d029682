import { expect, test } from 'vitest'
import { timeTicks } from './time-ticks.ts'

const labels = (from: string, to: string, most: number) =>
  timeTicks(new Date(from), new Date(to), most, 'Europe/London').map(({ label }) => label)

test('six years have years, half a year has months, and a January is its year', () => {
  expect(labels('2021-01-21T07:05:00Z', '2026-11-29T00:00:00Z', 8)).toEqual(['2022', '2023', '2024', '2025', '2026'])
  expect(labels('2025-10-20T00:00:00Z', '2026-03-04T00:00:00Z', 8)).toEqual(['Nov', 'Dec', '2026', 'Feb', 'Mar'])
})

test('a narrow axis has fewer, and never more than there is room for', () => {
  expect(labels('2021-01-21T07:05:00Z', '2026-11-29T00:00:00Z', 3)).toEqual(['2022', '2024', '2026'])
  for (const most of [1, 2, 5, 11])
    expect(labels('1998-03-01T00:00:00Z', '2026-11-29T00:00:00Z', most).length).toBeLessThanOrEqual(most)
})

test('a month begins at midnight by the clock of the site', () => {
  const [july] = timeTicks(new Date('2026-06-20T00:00:00Z'), new Date('2026-07-20T00:00:00Z'), 4, 'Europe/London')
  expect(july).toEqual({ at: '2026-06-30T23:00:00.000Z', label: 'Jul' })
})
