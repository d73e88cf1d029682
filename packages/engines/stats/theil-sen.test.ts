import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { theilSen } from './theil-sen.ts'

const level = (count: number) => Array.from({ length: count }, (_, x) => ({ x, y: 0 }))

describe('Theil-Sen', () => {
  it('(0,0) (1,2) (2,4) (3,60): pair slopes 2 2 2 20 29 58, median 11; one of nine spoilt leaves 2', () => {
    const four = [0, 2, 4, 60].map((y, x) => ({ x, y }))
    expect(theilSen({ points: four, confidence: 0.9 })).toMatchObject({ slope: 11 })
    const nine = Array.from({ length: 9 }, (_, x) => ({ x, y: x === 4 ? 1e6 : 2 * x + 1 }))
    expect(theilSen({ points: nine, confidence: 0.9 })).toMatchObject({ slope: 2, interceptByResiduals: 1 })
  })

  it('leaves out pairs at one x', () => {
    const points = [
      { x: 1, y: 0 },
      { x: 1, y: 50 },
      { x: 2, y: 1 },
    ]
    expect(theilSen({ points, confidence: 0.9 })).toMatchObject({ ok: true, slope: (1 - 49) / 2 })
  })

  it.each([
    [{ points: [], confidence: 0.9 }, 'line/one-x', 'points'],
    [{ points: [{ x: 1, y: 1 }], confidence: 0.9 }, 'line/one-x', 'points'],
    [{ points: [{ x: NaN, y: 1 }], confidence: 0.9 }, 'number/out-of-range', 'points'],
    [{ points: level(3), confidence: NaN }, 'confidence/not-a-share', 'confidence'],
    [{ points: level(3001), confidence: 0.9 }, 'line/too-many-points', 'points'],
  ])('refuses what has no slope', (input, code, field) => {
    expect(theilSen(input)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('has its slope within its limits, wider ones for more confidence, and turns with the points', () => {
    const ys = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 25 })
    fc.assert(
      fc.property(ys, fc.integer({ min: -9, max: 9 }), (drawn, turn) => {
        const points = drawn.map((y, x) => ({ x, y }))
        const line = theilSen({ points, confidence: 0.9 })
        const wide = theilSen({ points, confidence: 0.999 })
        const turned = theilSen({ points: points.map(({ x, y }) => ({ x, y: y + turn * x })), confidence: 0.9 })
        if (!line.ok || !wide.ok || !turned.ok) throw new Error('refused')
        expect(line.slopeLower <= line.slope && line.slope <= line.slopeUpper).toBe(true)
        expect(wide.slopeLower <= line.slopeLower && line.slopeUpper <= wide.slopeUpper).toBe(true)
        expect(turned.slope).toBeCloseTo(line.slope + turn, 9)
      }),
    )
  })

  it('gives finite figures or a named problem for any points', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ x: fc.double(), y: fc.double() })), (points) => {
        const line = theilSen({ points, confidence: 0.95 })
        if (line.ok) expect(Object.values(line).every((figure) => figure === true || Number.isFinite(figure))).toBe(true)
      }),
    )
  })
})
