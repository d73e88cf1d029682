import { describe, expect, it } from 'vitest'
import { logRateSeen, priorOfLife } from './earlier-lives.ts'
import { defaultPrior } from './prior.ts'

const prior = { ...defaultPrior, rate: { logRate: -5, logRateVariance: 0.5, logRateMeanVariance: 0.1 }, valveShare: 0.4 }

describe('earlier lives of a valve', () => {
  it('pull 50 and information 5000 tell a rate of 0.01 with a relative error of 1/√5000/0.01 = 1.41: too little', () =>
    expect(logRateSeen({ pull: 50, information: 5000 })).toBeNull())

  it('ten thousand times that tell it with 0.0141', () => {
    const seen = logRateSeen({ pull: 5e5, information: 5e7 })
    expect(seen?.logRate).toBeCloseTo(Math.log(0.01), 12)
    expect(seen?.errorVariance).toBeCloseTo(0.0002, 12)
  })

  it.each([
    ['a rise', { pull: -1e6, information: 5e7 }],
    ['one reading', { pull: 0, information: 0 }],
    ['two readings a moment apart', { pull: 1e-300, information: 0 }],
  ])('%s tells nothing', (_, evidence) => expect(logRateSeen(evidence)).toBeNull())

  it('without one the prior is the group: variance 0.5 + 0.1', () =>
    expect(priorOfLife(prior, [])).toEqual({ mean: -5, variance: 0.2 + 0.1 + 0.3, lives: 0 }))

  it('one at -4 with error 0.1: own mean N(-5, 0.3), life 0.3 + 0.1, gain 3/7, so N(-4.571, 0.3 × 4/7 + 0.3)', () => {
    const { mean, variance } = priorOfLife(prior, [{ logRate: -4, errorVariance: 0.1 }])
    expect(mean).toBeCloseTo(-5 + 3 / 7, 12)
    expect(variance).toBeCloseTo((0.3 * 4) / 7 + 0.3, 12)
  })

  it('the order of the lives does not matter', () => {
    const seen = [
      { logRate: -4, errorVariance: 0.1 },
      { logRate: -6, errorVariance: 0.02 },
    ]
    const one = priorOfLife(prior, seen)
    const other = priorOfLife(prior, seen.toReversed())
    expect(one.mean).toBeCloseTo(other.mean, 12)
    expect(one.variance).toBeCloseTo(other.variance, 12)
  })
})
