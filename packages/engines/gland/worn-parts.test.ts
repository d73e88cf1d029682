import { bar, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wornParts } from './worn-parts.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const input = {
  stemDiameters: [mm(28), mm(27.8), mm(27.9)],
  boreDiameters: [mm(45), mm(45.2)],
  stemAsNew: mm(28),
  boreAsNew: mm(45),
  followerBore: mm(28.6),
  neckBore: mm(29),
}
const worn = (change: Partial<Parameters<typeof wornParts>[0]> = {}) => {
  const figures = wornParts({ ...input, ...change })
  if (!figures.ok) throw new Error(figures.problem.detail)
  return figures
}

describe('worn stem and bore', () => {
  it('mean of 28, 27.8 and 27.9 is 27.9, ovality 0.2, worn by 0.2', () => {
    const { stem } = worn()
    expect(stem.mean).toBeCloseTo(27.9, 12)
    expect(stem.ovality).toBeCloseTo(0.2, 12)
    expect(stem.wear).toBeCloseTo(0.2, 12)
  })

  it('bore of 45 to 45.2 is worn by 0.2 and oval by 0.2', () => {
    expect(worn().bore.wear).toBeCloseTo(0.2, 12)
    expect(worn().bore.ovality).toBeCloseTo(0.2, 12)
  })

  it('section: mean (45.1 - 27.9) / 2 = 8.6, least (45 - 28) / 2 = 8.5, most (45.2 - 27.8) / 2 = 8.7', () => {
    const { section } = worn()
    expect([section.mean, section.least, section.most].map((value) => Number(value.toFixed(9)))).toEqual([8.6, 8.5, 8.7])
  })

  it('radial clearance is half of the difference: (28.6 - 27.8) / 2 = 0.4 and (29 - 27.8) / 2 = 0.6', () => {
    expect(worn().clearanceAtFollower).toBeCloseTo(0.4, 12)
    expect(worn().clearanceAtNeck).toBeCloseTo(0.6, 12)
  })

  it('warns over 2 % (0.172) of ovality and 5 % (0.43) of clearance, and not where more is allowed', () => {
    expect(worn().warnings.map(({ code }) => code)).toEqual(['worn/stem-oval', 'worn/bore-oval', 'worn/clearance-at-neck'])
    expect(worn({ limits: { ovality: ratio(0.03), extrusion: ratio(0.08) } }).warnings).toEqual([])
    expect(worn({ limits: { ovality: ratio(0.03), extrusion: ratio(0.04) } }).warnings.map(({ code }) => code)).toEqual([
      'worn/clearance-at-follower',
      'worn/clearance-at-neck',
    ])
  })

  it('a single measurement shows no ovality, and what is not known as new shows no wear', () => {
    expect(wornParts({ stemDiameters: [mm(28)], boreDiameters: [mm(45)] })).toMatchObject({
      stem: { mean: 28, ovality: null, wear: null },
      clearanceAtFollower: null,
      clearanceAtNeck: null,
      warnings: [],
    })
  })

  it('a part larger than new has negative wear: 28 - 28.1', () => {
    expect(worn({ stemDiameters: [mm(28.1)] }).stem.wear).toBeCloseTo(-0.1, 12)
  })
})

describe('what cannot be', () => {
  it.each([
    ['no stem measured', { stemDiameters: [] }, 'worn/nothing-measured', 'stemDiameters'],
    ['a bore of nothing', { boreDiameters: [mm(45), mm(0)] }, 'number/not-positive', 'boreDiameters'],
    [
      'more readings than anybody takes',
      { boreDiameters: Array.from({ length: 10_001 }, () => mm(45)) },
      'number/not-a-count',
      'boreDiameters',
    ],
    [
      'a narrowest bore under the thickest stem',
      { boreDiameters: [mm(45), mm(28)] },
      'gland/bore-not-larger-than-stem',
      'boreDiameters',
    ],
    ['a follower the stem does not pass', { followerBore: mm(27.9) }, 'worn/hole-smaller-than-stem', 'followerBore'],
    ['a neck the stem does not pass', { neckBore: mm(20) }, 'worn/hole-smaller-than-stem', 'neckBore'],
    ['a new stem of nothing', { stemAsNew: mm(0) }, 'number/not-positive', 'stemAsNew'],
    ['a limit of the whole', { limits: { ovality: ratio(1), extrusion: ratio(0.1) } }, 'number/not-a-share', 'limits.ovality'],
  ])('%s', (_, change, code, field) => {
    expect(wornParts({ ...input, ...change })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('any doubles give figures or a named problem', () => {
    fc.assert(
      fc.property(fc.array(anyNumber), fc.array(anyNumber), anyNumber, (stems, bores, followerBore) => {
        const figures = wornParts({ stemDiameters: stems, boreDiameters: bores, followerBore } as never)
        if (!figures.ok) {
          expect(figures.problem.code).toMatch(/\w\/\w/)
          return
        }
        for (const value of [figures.section.mean, figures.stem.mean, figures.clearanceAtFollower])
          expect(Number.isFinite(value)).toBe(true)
      }),
    )
  })

  it('least <= mean <= most, for parts and for the section; a further wear of the stem only opens the clearance', () => {
    const stems = fc.array(fc.double({ min: 20, max: 30, noNaN: true }), { minLength: 1 })
    const bores = fc.array(fc.double({ min: 40, max: 60, noNaN: true }), { minLength: 1 })
    fc.assert(
      fc.property(stems, bores, fc.double({ min: 10, max: 20, noNaN: true }), (stem, bore, thinner) => {
        const one = worn({ stemDiameters: stem.map(mm), boreDiameters: bore.map(mm), followerBore: mm(31), neckBore: mm(31) })
        for (const { least, mean, most } of [one.stem, one.bore, one.section]) {
          expect(mean).toBeGreaterThanOrEqual(least - 1e-9)
          expect(mean).toBeLessThanOrEqual(most + 1e-9)
        }
        const two = worn({
          stemDiameters: [...stem, thinner].map(mm),
          boreDiameters: bore.map(mm),
          followerBore: mm(31),
          neckBore: mm(31),
        })
        expect(two.clearanceAtFollower).toBeGreaterThanOrEqual(one.clearanceAtFollower!)
      }),
    )
  })
})

// @ts-expect-error bare numbers are no diameters
wornParts({ stemDiameters: [28], boreDiameters: [mm(45)] })
// @ts-expect-error bar is no diameter
wornParts({ ...input, neckBore: bar(29) })
