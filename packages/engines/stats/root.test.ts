import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rootByNewton } from './root.ts'

describe('rootByNewton', () => {
  it('finds the cube root of 27, and of any number between its ends', () => {
    const cubeRoot = (of: number) =>
      rootByNewton({ from: -100, to: 100, start: 1, valueAt: (x) => x ** 3 - of, slopeAt: (x) => 3 * x * x })
    expect(cubeRoot(27)).toBeCloseTo(3, 14)
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (of) => {
        expect(cubeRoot(of)).toBeCloseTo(Math.cbrt(of), 9)
      }),
    )
  })

  it('halves its way where the slope is of no use', () => {
    const jump = rootByNewton({ from: 0, to: 8, start: 1, valueAt: (x) => (x < 3 ? -1 : 1), slopeAt: () => NaN })
    expect(jump).toBeCloseTo(3, 12)
  })

  it('ends at an end where there is no root between', () => {
    expect(rootByNewton({ from: 0, to: 8, start: 1, valueAt: (x) => x + 1, slopeAt: () => 1 })).toBeCloseTo(0, 12)
    expect(rootByNewton({ from: 0, to: 8, start: 1, valueAt: (x) => x - 9, slopeAt: () => 1 })).toBeCloseTo(8, 12)
  })
})
