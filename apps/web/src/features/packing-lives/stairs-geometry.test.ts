import type { ComparedPacking } from '@glandkeeper/contract/packing-lives'
import { describe, expect, it } from 'vitest'
import { stairsFrame } from './stairs-geometry.ts'

function packing(family: string, given: object): ComparedPacking {
  const steps = [
    { months: 0, survival: 1, lower: null, upper: null },
    { months: 20, survival: 0.5, lower: 0.25, upper: 0.75 },
    { months: 40, survival: 0.25, lower: 0, upper: 0.5 },
  ]
  const atRisk = [0, 20, 40].map((months, index) => ({ months, lives: [8, 6, 2][index] }))
  return { family, isTooFew: false, steps, atRisk, ...given } as unknown as ComparedPacking
}

describe('stairs of packings', () => {
  // 800 px for 40 months from 46, 280 px for all from 294.
  const frame = stairsFrame([packing('graphite braid', {}), packing('PTFE braid', { isTooFew: true })], 1036)
  const [graphite, ptfe] = frame.stairs

  it('begin with all going and stand still until one is worn out', () => {
    expect(graphite?.path).toBe('M46 14H46V14H446V154H846V224')
    expect(graphite?.band).toBe('M446 84H846V154V294H846V224H446Z')
  })

  it('differ by their dashes, and those with too few are told', () => {
    expect(graphite?.dash).not.toBe(ptfe?.dash)
    expect([graphite?.isTooFew, ptfe?.isTooFew]).toEqual([false, true])
  })

  it('have labels a line apart where they end together', () => {
    expect([graphite?.endY, ptfe?.endY]).toEqual([224, 224])
    expect([graphite?.labelY, ptfe?.labelY]).toEqual([224, 240])
  })

  it('have those watched so long under the axis, a row for each', () => {
    expect(graphite?.atRisk).toEqual([
      { x: 46, lives: 8 },
      { x: 446, lives: 6 },
      { x: 846, lives: 2 },
    ])
    expect((ptfe?.rowY ?? 0) - (graphite?.rowY ?? 0)).toBe(20)
    expect(frame.times.map(({ label }) => label)).toEqual(['0', '20', '40'])
    expect(frame.height).toBeGreaterThan(ptfe?.rowY ?? Infinity)
  })
})

it('labels of lines that end on the axis are pushed up from it, in their order', () => {
  const ended = { steps: [{ months: 40, survival: 0, lower: null, upper: null }] }
  const { stairs, base } = stairsFrame([packing('a', {}), packing('b', ended), packing('c', ended)], 1036)
  expect(stairs.map(({ labelY }) => labelY)).toEqual([224, base - 16, base])
})

it('letters stand for the names where there is no room', () => {
  const frame = stairsFrame([packing('a', {}), packing('b', {})], 358)
  expect([frame.hasNames, frame.stairs.map(({ letter }) => letter)]).toEqual([false, ['A', 'B']])
  expect(frame.right).toBeGreaterThan(300)
})

it('figures under the axis that have no room are left out, not written over each other', () => {
  const atRisk = Array.from({ length: 21 }, (_, index) => ({ months: index * 2, lives: 21 - index }))
  const { stairs } = stairsFrame([packing('a', { atRisk })], 358)
  const xs = stairs[0]?.atRisk.map(({ x }) => x) ?? []
  expect(xs.length).toBeGreaterThan(3)
  expect(Math.min(...xs.slice(1).map((x, index) => x - (xs[index] ?? 0)))).toBeGreaterThanOrEqual(44)
})

it('nothing to draw is an empty frame', () => {
  const frame = stairsFrame([], 358)
  expect([frame.stairs, frame.times]).toEqual([[], []])
  expect(Number.isFinite(frame.height)).toBe(true)
  expect(stairsFrame([packing('a', { steps: [], atRisk: [] })], 358).stairs[0]?.path).toBe('M46 14')
})
