import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { posteriorOfRate, rateMoments } from './posterior.ts'

/** Four thousand nodes over ten standard deviations of the prior. */
function byManyNodes(
  { pull, information }: { pull: number; information: number },
  { mean, variance }: { mean: number; variance: number },
) {
  const spacing = (20 * Math.sqrt(variance)) / 4000
  const nodes = Array.from({ length: 4001 }, (_, node) => mean + (node - 2000) * spacing)
  const heights = nodes.map((logRate) => {
    const rate = Math.exp(logRate)
    return pull * rate - (information * rate * rate) / 2 - (logRate - mean) ** 2 / (2 * variance)
  })
  const highest = Math.max(...heights)
  const weights = heights.map((height) => Math.exp(height - highest))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const logMean = nodes.reduce((sum, logRate, k) => sum + weights[k]! * logRate, 0) / total
  const logVariance = nodes.reduce((sum, logRate, k) => sum + weights[k]! * (logRate - logMean) ** 2, 0) / total
  return { logMean, logVariance, logEvidence: highest + Math.log(total * spacing) - Math.log(2 * Math.PI * variance) / 2 }
}

const prior = { mean: -4.8, variance: 0.5 }

describe('belief about the rate', () => {
  it('without evidence is the prior', () => {
    const { logMean, logVariance, logEvidence, weights } = posteriorOfRate({ pull: 0, information: 0 }, prior)
    expect(logMean).toBeCloseTo(-4.8, 12)
    expect(logVariance).toBeCloseTo(0.5, 2)
    expect(logEvidence).toBeCloseTo(0, 3)
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
  })

  it.each([
    ['one weak fall', { pull: 100, information: 2e4 }],
    ['a clear fall', { pull: 5e3, information: 5e5 }],
    ['a very clear fall', { pull: 1e6, information: 1e8 }],
    ['slow wear, clearly', { pull: 800, information: 6e5 }],
    ['no fall', { pull: 0, information: 1e5 }],
    ['a rise', { pull: -300, information: 1e5 }],
  ])('after %s is that of four thousand nodes', (_, evidence) => {
    const few = posteriorOfRate(evidence, prior)
    const many = byManyNodes(evidence, prior)
    expect(few.logMean).toBeCloseTo(many.logMean, 2)
    expect(Math.abs(few.logVariance / many.logVariance - 1)).toBeLessThan(0.03)
    expect(Math.abs(few.logEvidence - many.logEvidence)).toBeLessThan(0.01)
  })

  it('much evidence puts the mean rate at pull / information, here 0.02 mm a day, with variance 1 / information', () => {
    const { mean, variance } = rateMoments(posteriorOfRate({ pull: 2e6, information: 1e8 }, { mean: -4, variance: 100 }))
    expect(mean).toBeCloseTo(0.02, 5)
    expect(variance).toBeCloseTo(1e-8, 9)
  })

  it('is finite, and its weights sum to 1, for any evidence', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1e12, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 1e-9, max: 200, noNaN: true }),
        (ownRate, information, mean, variance) => {
          const posterior = posteriorOfRate({ pull: information * ownRate, information }, { mean, variance })
          expect(posterior.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9)
          expect(Number.isFinite(posterior.logEvidence)).toBe(true)
        },
      ),
    )
  })

  it('more pull never means a slower rate', () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true }), (pull, more) => {
        const slow = posteriorOfRate({ pull, information: 1e5 }, prior).logMean
        expect(posteriorOfRate({ pull: pull + more, information: 1e5 }, prior).logMean).toBeGreaterThanOrEqual(slow - 1e-3)
      }),
    )
  })
})
