import { mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { inchSection, metricSection, standardSections } from './standard-sections.ts'

describe('the standard sections', () => {
  it('are 17 metric and 15 inch sizes, each thicker than the one before', () => {
    for (const [system, count] of [
      ['metric', 17],
      ['inch', 15],
    ] as const) {
      const sizes = standardSections.filter((section) => section.system === system).map(({ size }) => size)
      expect(sizes).toHaveLength(count)
      expect(sizes).toEqual([...new Set(sizes)].toSorted((a, b) => a - b))
    }
  })

  it('bear the name on the rule: 2/16 is 1/8, 6/16 is 3/8, 16/16 is 1', () => {
    expect([2, 3, 6, 8, 16].map((sixteenths) => inchSection(sixteenths).designation)).toEqual([
      '1/8 in',
      '3/16 in',
      '3/8 in',
      '1/2 in',
      '1 in',
    ])
    expect(metricSection(mm(12.5)).designation).toBe('12.5 mm')
  })

  it('hold one inch size that is sold as a metric one', () => {
    expect(standardSections.filter(({ soldAs }) => soldAs !== null).map(({ designation }) => designation)).toEqual(['5/16 in'])
  })
})

// @ts-expect-error a bare number is no size
metricSection(8)
