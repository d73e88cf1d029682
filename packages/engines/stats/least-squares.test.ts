import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitLine, predictOnLine } from './least-squares.ts'

const points = fc.array(
  fc.record({ x: fc.double({ min: -1e4, max: 1e4, noNaN: true }), y: fc.double({ min: -1e4, max: 1e4, noNaN: true }) }),
  { minLength: 3, maxLength: 30 },
)

describe('least squares', () => {
  it('(0,1) (1,2) (2,2) (3,5): slope 6/5, intercept 7/10, residual squares 9/5, R² 7.2/9', () => {
    const line = fitLine([
      { x: 0, y: 1 },
      { x: 1, y: 2 },
      { x: 2, y: 2 },
      { x: 3, y: 5 },
    ])
    if (!line.ok) throw new Error(line.problem.detail)
    expect(line.slope).toBeCloseTo(1.2, 14)
    expect(line.intercept).toBeCloseTo(0.7, 14)
    expect(line.residualSquares).toBeCloseTo(1.8, 14)
    expect(line.rSquared).toBeCloseTo(0.8, 14)
    expect(line.slopeError).toBeCloseTo(Math.sqrt(0.9 / 5), 14)
    expect(line.degreesOfFreedom).toBe(2)
  })

  it('a reading has wider limits than the line, narrowest at the mean of x', () => {
    const line = fitLine([
      { x: 0, y: 1 },
      { x: 1, y: 2 },
      { x: 2, y: 2 },
      { x: 3, y: 5 },
    ])
    if (!line.ok) throw new Error(line.problem.detail)
    const widths = [1.5, 3, 10].map((x) => {
      const at = predictOnLine({ line, x, confidence: 0.9 })
      if (!at.ok) throw new Error(at.problem.detail)
      expect(at.lower < at.meanLower && at.meanLower < at.value && at.value < at.meanUpper && at.meanUpper < at.upper).toBe(true)
      return at.upper - at.lower
    })
    expect(widths).toEqual(widths.toSorted((one, other) => one - other))
  })

  it.each([
    [[], 'line/too-few-points'],
    [[1, 2], 'line/too-few-points'],
    [[5, 5, 5], 'line/one-x'],
    [[1, 2, NaN], 'number/out-of-range'],
    [[1, 2, Infinity], 'number/out-of-range'],
    [[1e200, -1e200, 0], 'number/out-of-range'],
  ])('refuses x of %j: %s', (xs, code) => {
    expect(fitLine(xs.map((x, index) => ({ x, y: index })))).toMatchObject({ ok: false, problem: { code, field: 'points' } })
  })

  it('explains nothing where all y are equal', () => {
    expect(fitLine([1, 2, 3].map((x) => ({ x, y: 7 })))).toMatchObject({
      slope: 0,
      intercept: 7,
      rSquared: null,
      residualDeviation: 0,
    })
  })

  it('refuses a prediction at no number, or with no confidence', () => {
    const line = fitLine([1, 2, 4].map((x) => ({ x, y: x * x })))
    if (!line.ok) throw new Error(line.problem.detail)
    expect(predictOnLine({ line, x: NaN, confidence: 0.9 })).toMatchObject({ ok: false, problem: { field: 'x' } })
    expect(predictOnLine({ line, x: 1, confidence: 0 })).toMatchObject({ ok: false, problem: { code: 'confidence/not-a-share' } })
    expect(predictOnLine({ line, x: 1e308, confidence: 0.9 })).toMatchObject({
      ok: false,
      problem: { code: 'number/out-of-range' },
    })
  })

  it('residuals sum to nought, and moving or scaling the points moves or scales the line', () => {
    fc.assert(
      fc.property(points, (drawn) => {
        const line = fitLine(drawn)
        fc.pre(line.ok && line.spreadX > 1e-3)
        if (!line.ok) return
        const size = drawn.reduce((sum, { x, y }) => sum + Math.abs(y) + Math.abs(line.slope * x) + Math.abs(line.intercept), 1)
        const residuals = drawn.reduce((sum, { x, y }) => sum + y - line.intercept - line.slope * x, 0)
        expect(Math.abs(residuals / size)).toBeLessThan(1e-10)
        const scaled = fitLine(drawn.map(({ x, y }) => ({ x: x / 25.4, y: y / 25.4 })))
        expect(scaled.ok && (scaled.slope - line.slope) / (1 + Math.abs(line.slope))).toBeCloseTo(0, 8)
      }),
    )
  })

  it('gives finite figures or a named problem for any points', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ x: fc.double(), y: fc.double() })), (drawn) => {
        const line = fitLine(drawn)
        if (line.ok)
          expect(Object.values(line).every((figure) => typeof figure !== 'number' || Number.isFinite(figure))).toBe(true)
      }),
    )
  })
})
