import { inchesToMillimetres } from '@glandkeeper/units/convert'
import { celsius, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PackedBox, ringsForBox, spacerForRings } from './box-space.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const box: PackedBox = {
  boxDepth: mm(80),
  section: mm(10),
  consolidation: ratio(0.3),
  noseLength: mm(30),
  leastEngagement: mm(5),
}
const held = (change: Partial<Parameters<typeof ringsForBox>[0]> = {}) => {
  const rings = ringsForBox({ ...box, ...change })
  if (!rings.ok) throw new Error(rings.problem.detail)
  return rings
}
const spaced = (wantedRings: number, change: Partial<PackedBox> = {}) => {
  const spacer = spacerForRings({ ...box, ...change, wantedRings })
  if (!spacer.ok) throw new Error(spacer.problem.detail)
  return spacer
}

describe('rings for a box', () => {
  it('80 deep, entry 5, section 10: 7 loose; seated to 7 each 1 + floor(65 / 7) = 10', () => {
    expect(held()).toMatchObject({ available: 80, usable: 75, looseRings: 7, rings: 10, advice: 'more than advised' })
  })

  it('less bush 8, lantern ring 10 and spacer 22 leaves 40: 3 loose, 1 + floor(25 / 7) = 4 seated', () => {
    const rings = held({ bottomBush: mm(8), lanternRing: mm(10), spacer: mm(22) })
    expect(rings).toMatchObject({ available: 40, usable: 35, looseRings: 3, rings: 4, advice: 'as advised' })
  })

  it('without consolidation seated and loose are the same, and a ring that just fits counts', () => {
    expect(held({ consolidation: ratio(0) })).toMatchObject({ looseRings: 7, rings: 7 })
    expect(held({ boxDepth: mm(15) })).toMatchObject({ looseRings: 1, rings: 1, advice: 'fewer than advised' })
    expect(held({ boxDepth: mm(0.3), section: mm(0.1), leastEngagement: mm(0), consolidation: ratio(0) }).rings).toBe(3)
  })

  it('takes your own advice', () => expect(held({ advised: { least: 7, most: 10 } }).advice).toBe('as advised'))
})

describe('a spacer for a deep box', () => {
  it('for 5 rings: 80 - 5 - 10 - 4 · 7 = 37, and 7 more than one of 30 in place', () => {
    expect(spaced(5)).toEqual({ ok: true, spacer: 37, more: 37 })
    expect(spaced(5, { spacer: mm(30) })).toEqual({ ok: true, spacer: 37, more: 7 })
  })

  it('may also be shorter than the one in place: 37 - 40 = -3', () => {
    expect(spaced(5, { spacer: mm(40) })).toEqual({ ok: true, spacer: 37, more: -3 })
  })

  it('is refused with what is missing: 11 rings need 85 of 75', () => {
    expect(spacerForRings({ ...box, wantedRings: 11 })).toMatchObject({
      problem: { code: 'ring-set/box-too-shallow', field: 'wantedRings', detail: 'the box is 5 mm too shallow for 11 rings' },
    })
  })

  it('brings the box down to just the wanted rings', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 0, max: 40 }), (wantedRings, percent) => {
        const consolidation = ratio(percent / 100)
        const { spacer } = spaced(wantedRings, { consolidation })
        expect(held({ consolidation, spacer }).rings).toBe(wantedRings)
      }),
    )
  })
})

describe('what no box is', () => {
  it.each([
    ['no depth', { boxDepth: mm(0) }, 'number/not-positive', 'boxDepth'],
    ['a negative bush', { bottomBush: mm(-1) }, 'number/negative', 'bottomBush'],
    ['a ring pressed to nothing', { consolidation: ratio(1) }, 'number/not-a-share', 'consolidation'],
    ['a nose all of which must stay in', { noseLength: mm(5) }, 'gland/nose-shorter-than-engagement', 'noseLength'],
    ['an entry under the least engagement', { followerEntry: mm(4) }, 'ring-set/entry-out-of-range', 'followerEntry'],
    ['an entry longer than the nose', { followerEntry: mm(31) }, 'ring-set/entry-out-of-range', 'followerEntry'],
    ['no ring', { boxDepth: mm(14.9) }, 'ring-set/no-ring-fits', 'boxDepth'],
    ['filled by a spacer', { spacer: mm(90) }, 'ring-set/no-ring-fits', 'boxDepth'],
    ['filled by a hundred thousand rings', { section: mm(0.0001) }, 'number/out-of-range', 'section'],
    ['advised half a ring', { advised: { least: 0.5, most: 4 } }, 'number/not-a-count', 'advised.least'],
  ])('%s', (_, change, code, field) => {
    expect(ringsForBox({ ...box, ...change })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('any doubles give at least one ring or a named problem', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, anyNumber, (boxDepth, section, consolidation, spacer) => {
        const rings = ringsForBox({ ...box, boxDepth, section, consolidation, spacer } as never)
        if (!rings.ok) {
          expect(rings.problem.code).toMatch(/\w\/\w/)
          return
        }
        expect(rings.rings).toBeGreaterThanOrEqual(1)
        expect(Number.isSafeInteger(rings.rings)).toBe(true)
        expect(rings.looseRings).toBeLessThanOrEqual(rings.rings)
      }),
    )
  })

  it('a deeper box never holds fewer, and inches hold what millimetres hold', () => {
    const depth = fc.double({ min: 20, max: 400, noNaN: true })
    fc.assert(
      fc.property(depth, depth, (one, other) => {
        const [shallow, deep] = [Math.min(one, other), Math.max(one, other)]
        expect(held({ boxDepth: mm(deep) }).rings).toBeGreaterThanOrEqual(held({ boxDepth: mm(shallow) }).rings)
      }),
    )
    const inches = held({ boxDepth: inchesToMillimetres(3), section: inchesToMillimetres(0.375) })
    expect(inches.usable).toBeCloseTo(71.2, 9)
    expect(inches.rings).toBe(held({ boxDepth: mm(76.2), section: mm(9.525) }).rings)
  })
})

// @ts-expect-error a bare number is no depth
ringsForBox({ ...box, boxDepth: 80 })
// @ts-expect-error degrees Celsius are no length
spacerForRings({ ...box, wantedRings: 5, spacer: celsius(20) })
