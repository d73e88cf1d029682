import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitLine, type FittedLine, predictOnLine } from '@glandkeeper/engines/stats/least-squares'
import { theilSen } from '@glandkeeper/engines/stats/theil-sen'
import { describe, expect, it } from 'vitest'

interface Drawn {
  readonly x: number[]
  readonly y: number[]
}
type Reading = [value: number, lower: number, upper: number]
type Certified = 'intercept' | 'slope' | 'interceptError' | 'slopeError' | 'residualDeviation' | 'rSquared'

/** Each with its source and mark beside the values. */
const published = read('stats-lines.json') as {
  norris: Record<Certified | 'regressionSquares' | 'residualSquares' | 'residualMeanSquare', number> & {
    readings: Record<string, Reading>
  }
  stopping: Drawn & { intercept: number; slope: number; readings: Record<string, Reading>; meanAt10: [number, number] }
  quartet: Drawn & Record<Certified, number>
  sen: Drawn & { slope: number; interceptByMedians: number; interceptByResiduals: number; limits93: [number, number] }
  threePoints: Drawn & { slope: number; interceptByMedians: number; interceptByResiduals: number }
  outlier: Drawn & { slope: number; interceptByResiduals: number }
}
const norrisPoints = pointsOf(read('norris.json') as Drawn)

function read(name: string): unknown {
  return JSON.parse(readFileSync(path.join(import.meta.dirname, 'values', name), 'utf8'))
}

function pointsOf({ x, y }: Drawn) {
  return x.map((at, index) => ({ x: at, y: y[index]! }))
}

function lineThrough(points: readonly { x: number; y: number }[]): FittedLine {
  const line = fitLine(points)
  if (!line.ok) throw new Error(line.problem.detail)
  return line
}

function readingAt(line: FittedLine, x: number) {
  const predicted = predictOnLine({ line, x, confidence: 0.95 })
  if (!predicted.ok) throw new Error(predicted.problem.detail)
  return predicted
}

describe('least squares', () => {
  const certified = Object.entries(published.norris).flatMap(([what, value]) =>
    typeof value === 'number' ? [{ what, value }] : [],
  )

  it('has nine certified figures to meet', () => expect(certified).toHaveLength(9))

  it.each(certified)('Norris, certified $what $value, to twelve digits', ({ what, value }) => {
    const line = lineThrough(norrisPoints)
    const figures: Record<string, number | null> = { ...line, residualMeanSquare: line.residualDeviation ** 2 }
    expect(Math.abs(figures[what]! / value - 1)).toBeLessThan(1e-12)
  })

  it.each(Object.entries(published.norris.readings))('Norris, 95 %% limits of a reading at %s', (x, [value, lower, upper]) => {
    const ours = readingAt(lineThrough(norrisPoints), Number(x))
    expect(ours.value).toBeCloseTo(value, 7)
    expect(ours.lower).toBeCloseTo(lower, 7)
    expect(ours.upper).toBeCloseTo(upper, 6)
  })

  it('stopping distances: line, readings at 10 and 20 mph, and the line at 10 mph', () => {
    const { intercept, slope, readings, meanAt10 } = published.stopping
    const line = lineThrough(pointsOf(published.stopping))
    expect(line.intercept).toBeCloseTo(intercept, 6)
    expect(line.slope).toBeCloseTo(slope, 6)
    for (const [x, reading] of Object.entries(readings)) {
      const { value, lower, upper } = readingAt(line, Number(x))
      expect([value, lower, upper].map((figure) => figure.toFixed(5))).toEqual(reading.map((figure) => figure.toFixed(5)))
    }
    const { meanLower, meanUpper } = readingAt(line, 10)
    expect([meanLower.toFixed(5), meanUpper.toFixed(5)]).toEqual(meanAt10.map((figure) => figure.toFixed(5)))
  })

  it('the first of the quartet of 1973 (from memory)', () => {
    const { x, y, ...figures } = published.quartet
    const line = lineThrough(pointsOf({ x, y }))
    for (const what of ['intercept', 'slope', 'interceptError', 'slopeError', 'rSquared'] as const)
      expect(line[what]!.toFixed(4)).toBe(figures[what].toFixed(4))
    expect(line.residualDeviation.toFixed(3)).toBe(figures.residualDeviation.toFixed(3))
  })
})

describe('Theil-Sen', () => {
  it("Sen's example: slope 4, intercepts 4 and 6, 93 % limits 3.71 to 4.38", () => {
    const line = theilSen({ points: pointsOf(published.sen), confidence: 0.93 })
    const { slope, interceptByMedians, interceptByResiduals, limits93 } = published.sen
    expect(line).toMatchObject({ ok: true, slope, interceptByMedians, interceptByResiduals })
    if (!line.ok) throw new Error(line.problem.detail)
    // The printed limits are 26/7 and 35/8, to two decimals; toFixed would round 4.375 by its binary dust.
    expect(Math.abs(line.slopeLower - limits93[0])).toBeLessThanOrEqual(0.005)
    expect(Math.abs(line.slopeUpper - limits93[1])).toBeLessThanOrEqual(0.005)
  })

  it('three points', () => {
    const { x, y, ...figures } = published.threePoints
    const { slope, interceptByMedians, interceptByResiduals } = figures
    expect(theilSen({ points: pointsOf({ x, y }), confidence: 0.95 })).toMatchObject({
      slope,
      interceptByMedians,
      interceptByResiduals,
    })
  })

  it('a gross error among seven leaves the slope as it was', () => {
    const { slope, interceptByResiduals } = published.outlier
    expect(theilSen({ points: pointsOf(published.outlier), confidence: 0.95 })).toMatchObject({ slope, interceptByResiduals })
  })
})
