import { inchesToMillimetres } from '@glandkeeper/units/convert'
import { degrees, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitSection } from './fitted-section.ts'
import { metricSection, standardSections } from './standard-sections.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const fitted = (space: number, change: Partial<Parameters<typeof fitSection>[0]> = {}) => {
  const fit = fitSection({ boxBore: mm(30 + 2 * space), stemDiameter: mm(30), ...change })
  if (!fit.ok) throw new Error(fit.problem.detail)
  return fit
}

describe('the section to take', () => {
  it('fits where it is the space: (46 - 30) / 2 = 8', () => {
    expect(fitted(8)).toMatchObject({
      space: 8,
      metric: { section: { designation: '8 mm' }, verdict: 'fits', over: 0, rollTo: null, gapInAll: 0 },
      recommended: { section: { designation: '8 mm' } },
    })
  })

  it('is rolled down from 9.5 to 9.1, 0.4 being less than 5 % of 9.5', () => {
    const { recommended } = fitted(9.1, { sections: [metricSection(mm(9.5))] })
    expect(recommended).toMatchObject({ verdict: 'roll down', section: { size: 9.5 } })
    expect(recommended?.rollTo).toBeCloseTo(9.1, 12)
    expect(recommended?.over).toBeCloseTo(0.4, 12)
  })

  it('is too big where rolling from 9.5 to 9 is more than 5 %, and may be rolled where 6 % is allowed', () => {
    const sections = [metricSection(mm(9.5))]
    expect(fitted(9, { sections })).toMatchObject({ metric: { verdict: 'too big', rollTo: null }, recommended: null })
    expect(fitted(9, { sections, rollDownLimit: ratio(0.06) }).recommended?.verdict).toBe('roll down')
  })

  it('is too small where 8 in a space of 9 leaves 1 on each side, 2 in all', () => {
    expect(fitted(9, { sections: [metricSection(mm(8))] })).toMatchObject({
      metric: { verdict: 'too small', gapPerSide: 1, gapInAll: 2, rollTo: null },
      inch: null,
      recommended: null,
    })
  })

  it('may be rolled before it is nearer and too small: 10 rather than 9.5 in 9.73', () => {
    const sections = [metricSection(mm(9.5)), metricSection(mm(10))]
    expect(fitted(9.73, { sections }).metric).toMatchObject({ section: { size: 10 }, verdict: 'roll down' })
  })

  it('is an inch size where no metric one goes in: 7/16 is 11.1125', () => {
    expect(fitted(11.1125).recommended?.section.designation).toBe('7/16 in')
  })
})

describe('common practice, no source: 5/16 inch is sold as 8 mm', () => {
  const fiveSixteenths = standardSections.find(({ designation }) => designation === '5/16 in')

  it('7.9375 and 8 each fit a space made for the other', () => {
    expect(fiveSixteenths).toMatchObject({ size: 7.9375, soldAs: 8 })
    expect(fitted(7.9375).metric).toMatchObject({ section: { designation: '8 mm' }, verdict: 'fits' })
    expect(fitted(8).inch).toMatchObject({ section: { designation: '5/16 in' }, verdict: 'fits' })
  })
})

describe('what cannot be fitted', () => {
  it.each([
    ['a bore no larger than the stem', { boxBore: mm(30) }, 'gland/bore-not-larger-than-stem', 'boxBore'],
    ['no bore', { boxBore: mm(0) }, 'number/not-positive', 'boxBore'],
    ['a negative stem', { stemDiameter: mm(-1) }, 'number/not-positive', 'stemDiameter'],
    ['a bore of a kilometre', { boxBore: mm(1e6) }, 'number/out-of-range', 'boxBore'],
    ['a limit of the whole section', { rollDownLimit: ratio(1) }, 'number/not-a-share', 'rollDownLimit'],
    ['a negative tolerance', { fitTolerance: ratio(-0.1) }, 'number/not-a-share', 'fitTolerance'],
    ['an empty list', { sections: [] }, 'section/none-listed', 'sections'],
    ['a section of nothing', { sections: [metricSection(mm(0))] }, 'number/not-positive', 'sections'],
  ])('%s', (_, change, code, field) => {
    expect(fitSection({ boxBore: mm(46), stemDiameter: mm(30), ...change })).toMatchObject({
      ok: false,
      problem: { code, field },
    })
  })

  it('nor any double at all is answered by anything but figures or a named problem', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, (boxBore, stemDiameter, rollDownLimit) => {
        const fit = fitSection({ boxBore, stemDiameter, rollDownLimit } as never)
        if (!fit.ok) {
          expect(fit.problem.code).toMatch(/\w\/\w/)
          return
        }
        expect(Number.isFinite(fit.space)).toBe(true)
        for (const one of [fit.metric, fit.inch]) expect(one!.gapInAll).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('a recommended section never leaves more than the tolerance, nor needs more rolling than the limit', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 40, noNaN: true }), (space) => {
        const { recommended, metric, inch } = fitted(space)
        if (recommended === null) {
          expect([metric?.verdict, inch?.verdict].join()).toMatch(/^too \w+,too \w+$/)
          return
        }
        expect(recommended.over).toBeGreaterThanOrEqual(-0.02 * space - 1e-6)
        expect(recommended.over).toBeLessThanOrEqual(0.05 * recommended.section.size + 1e-6)
      }),
    )
  })

  it('the verdict does not depend on the unit the diameters were read in: 1-3/4 and 1-1/8 inch', () => {
    const inches = fitSection({ boxBore: inchesToMillimetres(1.75), stemDiameter: inchesToMillimetres(1.125) })
    const metric = fitSection({ boxBore: mm(44.45), stemDiameter: mm(28.575) })
    if (!inches.ok || !metric.ok) throw new Error('neither is refused')
    expect(inches.space).toBeCloseTo(7.9375, 9)
    expect(inches.recommended).toMatchObject({ section: { designation: '5/16 in' }, verdict: 'fits' })
    expect(metric.recommended).toMatchObject({ section: { designation: '5/16 in' }, verdict: 'fits' })
  })
})

// @ts-expect-error a bare number is no diameter
fitSection({ boxBore: 46, stemDiameter: mm(30) })
// @ts-expect-error degrees are no diameter
fitSection({ boxBore: mm(46), stemDiameter: degrees(30) })
