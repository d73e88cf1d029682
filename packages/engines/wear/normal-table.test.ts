import { expect, it } from 'vitest'
import { normalDistribution } from '../stats/normal.ts'
import { normalByTable } from './normal-table.ts'

it('the table is within 4e-9 of the normal distribution, and never falls', () => {
  let before = 0
  for (let x = -7.5; x < 7.5; x += 0.000_37) {
    const chance = normalByTable(x)
    expect(Math.abs(chance - normalDistribution(x))).toBeLessThan(4e-9)
    if (chance < before) expect(chance).toBeGreaterThanOrEqual(before)
    before = chance
  }
})

it('0, 1 and NaN at the ends', () => {
  expect([-Infinity, -7, 7, Infinity, NaN].map(normalByTable)).toEqual([0, 0, 1, 1, NaN])
})
