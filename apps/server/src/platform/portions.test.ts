import { expect, it } from 'vitest'
import { inPortions } from './portions.ts'

it('hands over every row once and in order, two hundred at a time', () => {
  const rows = Array.from({ length: 450 }, (_, number) => ({ number, name: `"${number}" ä`, isNone: null, share: 1 / 3 }))
  const portions = inPortions(rows).map((portion) => JSON.parse(portion) as typeof rows)
  expect(portions.map((portion) => portion.length)).toEqual([200, 200, 50])
  expect(portions.flat()).toEqual(rows)
  expect(inPortions([])).toEqual([])
})
