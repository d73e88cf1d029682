import { degrees, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cordNeeded } from './cord.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const input = { stemDiameter: mm(28), section: mm(8.5), rings: 5, valves: 3, cutting: 'in a row' } as const
const needed = (change: Partial<Parameters<typeof cordNeeded>[0]> = {}) => {
  const cord = cordNeeded({ ...input, ...change })
  if (!cord.ok) throw new Error(cord.problem.detail)
  return cord
}

describe('cord for a kit', () => {
  it('3 valves of 5 butt rings of 114.6681 and a trial ring: 16 · 114.6681 = 1834.69, a tenth waste 2018.16, 3 metres', () => {
    const cord = needed()
    expect(cord.perValve).toBeCloseTo(573.3407, 4)
    expect(cord.netLength).toBeCloseTo(1834.69, 2)
    expect(cord.waste).toBeCloseTo(183.469, 3)
    expect(cord.needed).toBeCloseTo(2018.159, 3)
    expect(cord).toMatchObject({ pieces: 16, wholeMetres: 3 })
  })

  it('skived at 45° in a row loses the offset of 8.5 once for each valve, one by one at each of its 5 rings', () => {
    const cutAngle = degrees(45)
    expect(needed({ cutAngle }).perValve).toBeCloseTo(573.3407 + 8.5, 4)
    expect(needed({ cutAngle, cutting: 'one by one' }).perValve).toBeCloseTo(573.3407 + 5 * 8.5, 4)
  })

  it('a kerf of 1 is lost at each ring, the trial ring too: 15 + 1 = 16', () => {
    const plain = needed({ wasteShare: ratio(0) })
    expect(needed({ wasteShare: ratio(0), kerf: mm(1) }).needed - plain.needed).toBeCloseTo(16, 9)
  })

  it('without trial and waste one valve takes its own length', () => {
    const cord = needed({ valves: 1, trialRings: 0, wasteShare: ratio(0) })
    expect(cord.needed).toBe(cord.perValve)
  })

  it.each([
    ['no rings', { rings: 0 }, 'number/not-a-count', 'rings'],
    ['half a valve', { valves: 0.5 }, 'number/not-a-count', 'valves'],
    ['a negative trial', { trialRings: -1 }, 'number/not-a-count', 'trialRings'],
    ['a negative kerf', { kerf: mm(-1) }, 'number/negative', 'kerf'],
    ['all waste', { wasteShare: ratio(1) }, 'number/not-a-share', 'wasteShare'],
    ['no section', { section: mm(0) }, 'number/not-positive', 'section'],
    ['a cut along the cord', { cutAngle: degrees(0) }, 'ring/angle-out-of-range', 'cutAngle'],
  ])('is not known for %s', (_, change, code, field) => {
    expect(cordNeeded({ ...input, ...change })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('any doubles give finite lengths or a named problem', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, anyNumber, (stemDiameter, rings, kerf, wasteShare) => {
        const cord = cordNeeded({ ...input, stemDiameter, rings, kerf, wasteShare } as never)
        if (!cord.ok) {
          expect(cord.problem.code).toMatch(/\w\/\w/)
          return
        }
        for (const value of Object.values(cord)) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
      }),
    )
  })

  it('more valves never need less, and in a row never more than one by one', () => {
    const count = fc.integer({ min: 1, max: 40 })
    fc.assert(
      fc.property(count, count, fc.double({ min: 30, max: 90, noNaN: true }), (valves, rings, angle) => {
        const change = { valves, rings, cutAngle: degrees(angle) }
        expect(needed({ ...change, valves: valves + 1 }).needed).toBeGreaterThan(needed(change).needed)
        expect(needed(change).needed).toBeLessThanOrEqual(needed({ ...change, cutting: 'one by one' }).needed + 1e-6)
        expect(needed(change).wholeMetres * 1000).toBeGreaterThanOrEqual(needed(change).needed - 1e-5)
      }),
    )
  })
})

// @ts-expect-error a bare number is no kerf
cordNeeded({ ...input, kerf: 1 })
// @ts-expect-error millimetres are no share
cordNeeded({ ...input, wasteShare: mm(0.1) })
