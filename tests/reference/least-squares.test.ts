import { readFileSync } from 'node:fs'
import path from 'node:path'
import { leastSquares } from '@glandkeeper/engines/wear/straight-line'
import { expect, it } from 'vitest'

/** NIST/ITL Statistical Reference Datasets, "Norris": 36 points, certified to 15 digits. */
const norris = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/norris.json'), 'utf8')) as {
  x: number[]
  y: number[]
  b0: number
  b1: number
}

it('reproduces the certified line of the Norris set to eleven digits', () => {
  const line = leastSquares(norris.x.map((x, index) => ({ x, y: norris.y[index]! })))
  expect(norris.x).toHaveLength(36)
  expect(line?.slope).toBeCloseTo(norris.b1, 11)
  expect(line?.intercept).toBeCloseTo(norris.b0, 11)
})
