import { expect, it } from 'vitest'
import { inPortions, rowsIn } from './portions.ts'

it('gives back every row once and in order, in portions of the size asked for', () => {
  const rows = Array.from({ length: 7 }, (_, number) => ({ number, name: `"${number}" ä`, isNone: null, share: 1 / 3 }))
  const portions = inPortions(rows, 3)
  expect(portions.map((portion) => rowsIn(portion).length)).toEqual([3, 3, 1])
  expect(portions.flatMap((portion) => rowsIn(portion))).toEqual(rows)
  expect(inPortions([])).toEqual([])
})
