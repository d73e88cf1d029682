import { describe, expect, it } from 'vitest'
import type { GroupOfLives, PackingComparison } from './compare.ts'
import { comparisonSentence, partsOf, verdictOf } from './sentence.ts'

const group = (name: string, change: Partial<GroupOfLives>): GroupOfLives => ({
  name,
  lives: 30,
  ended: 20,
  censored: 10,
  isTooFew: false,
  steps: [],
  atRisk: [],
  longest: 60,
  median: null,
  medianLower: null,
  medianUpper: null,
  law: null,
  whyNoLaw: null,
  ...change,
})
const graphite = group('graphite braid', { median: 41.2, medianLower: 33.1, medianUpper: 51.8 })
const ptfe = group('PTFE braid', { median: 27, medianLower: 22, medianUpper: 35 })
const lasting = group('carbon braid', { longest: 38 })
const few = group('aramid braid', { isTooFew: true, ended: 2, lives: 14, censored: 12, median: 8 })

const difference = (p: number, between = ['a', 'b']): PackingComparison['difference'] => ({
  chiSquared: 1,
  degreesOfFreedom: between.length - 1,
  p,
  between,
})
const said = (groups: readonly GroupOfLives[], found: PackingComparison['difference'] = null) =>
  comparisonSentence({ confidence: 0.95, groups, difference: found }, { service: 'steam above 250 °C' })

describe('a comparison in a sentence', () => {
  it('of two that differ', () => {
    expect(said([graphite, ptfe], difference(0.0042))).toBe(
      'In steam above 250 °C graphite braid lasts a median of 41 months (33 to 52), PTFE braid 27 (22 to 35); the difference is unlikely to be chance (p = 0.004).',
    )
  })

  it('of two that may differ by chance', () => {
    expect(said([graphite, ptfe], difference(0.213))).toContain('; the difference may be chance (p = 0.21).')
  })

  it('of three, together', () => {
    expect(said([graphite, ptfe, lasting], difference(0.0001, ['a', 'b', 'c']))).toMatch(
      /; the differences are unlikely to be chance \(p < 0\.001\)\.$/,
    )
    expect(said([graphite, ptfe, lasting], difference(0.999, ['a', 'b', 'c']))).toMatch(
      /; the differences may be chance \(p > 0\.99\)\.$/,
    )
  })

  it('where a median is not reached, and where too few have ended', () => {
    expect(said([few, lasting, graphite])).toBe(
      'In steam above 250 °C graphite braid lasts a median of 41 months (33 to 52); of carbon braid more than half were still going at 38 months; too few have ended to compare: aramid braid 2 of 14.',
    )
    expect(said([few])).toBe('In steam above 250 °C too few have ended to compare: aramid braid 2 of 14.')
  })

  it('a limit that is not reached is open, and without both nothing is said of them', () => {
    expect(said([group('a', { median: 9.46, medianLower: 7 })])).toContain('9.5 months (7 or more)')
    expect(said([group('a', { median: 9, medianUpper: 12 })])).toContain('9 months (at most 12)')
    expect(said([group('a', { median: 1 })])).toContain('a median of 1 month.')
  })
})

it('what is said is there as data', () => {
  expect(partsOf({ groups: [graphite, lasting, few] })).toEqual([
    { kind: 'median', name: 'graphite braid', median: 41.2, lower: 33.1, upper: 51.8 },
    { kind: 'more than half still going', name: 'carbon braid', at: 38 },
    { kind: 'too few', name: 'aramid braid', ended: 2, of: 14 },
  ])
})

it('unlikely is below one less the confidence', () => {
  expect(verdictOf({ confidence: 0.95, difference: difference(0.049) })).toBe('unlikely to be chance')
  expect(verdictOf({ confidence: 0.95, difference: difference(0.051) })).toBe('may be chance')
  expect(verdictOf({ confidence: 0.99, difference: difference(0.049) })).toBe('may be chance')
})
