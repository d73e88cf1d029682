import { bar, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsForBox } from './box-space.ts'
import { ringSet } from './ring-set.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const input = {
  boxDepth: mm(48),
  section: mm(8),
  consolidation: ratio(0.25),
  noseLength: mm(20),
  leastEngagement: mm(3.2),
  keepClear: mm(3),
}
const loaded = (rings: number, change: Partial<Parameters<typeof ringSet>[0]> = {}) => {
  const set = ringSet({ ...input, rings, ...change })
  if (!set.ok) throw new Error(set.problem.detail)
  return set
}

describe('a set of rings in its box', () => {
  it('6 of 8 at 25 %: 48 loose, 36 consolidated, 12 taken up', () => {
    expect(loaded(6)).toMatchObject({ looseHeight: 48, consolidatedHeight: 36, takeUp: 12, entryLoose: 0, entryAfter: 12 })
  })

  it('the nose goes down 48 - 36 = 12 to the packing: gap 20 - 12 = 8, reserve 8 - 3 = 5', () => {
    expect(loaded(6)).toMatchObject({ expectedGap: 8, expectedReserve: 5, limitedBy: 'gap', findings: [] })
  })

  it('a spacer of 4 leaves the nose 4 less room: gap 12, reserve 9', () => {
    expect(loaded(6, { spacer: mm(4) })).toMatchObject({ expectedGap: 12, expectedReserve: 9 })
  })

  it('reserve is capped by the nose: 8 rings, gap 20, nose 20 - 3.2 = 16.8', () => {
    expect(loaded(8, { keepClear: mm(0) })).toMatchObject({ expectedGap: 20, expectedReserve: 16.8, limitedBy: 'nose' })
  })
})

describe('the verdict', () => {
  it('7 rings are good: the last enters by 48 - 36 - 8 = 4', () => {
    expect(loaded(7)).toMatchObject({ verdict: 'good', entry: 4 })
  })

  it('6 rings leave room for one more, over which the follower enters by the same 4', () => {
    expect(loaded(6)).toMatchObject({ verdict: 'one more ring', entry: 4, reason: expect.stringContaining('4 mm') })
  })

  it('8 rings are one too many: 48 - 42 - 8 = -2 stands out', () => {
    expect(loaded(8)).toMatchObject({
      verdict: 'one ring too many',
      entry: -2,
      reason: expect.stringContaining('2 mm out of the box'),
    })
  })

  it('6 rings with a spacer of 8 are too many by the engagement: 48 - 8 - 30 - 8 = 2 of 3.2', () => {
    const reason = 'the follower would enter by only 2 mm, less than 3.2 mm'
    expect(loaded(6, { spacer: mm(8) })).toMatchObject({ verdict: 'one ring too many', entry: 2, reason })
  })

  it('a short nose over few rings does not reach them, and has no travel', () => {
    expect(loaded(3)).toMatchObject({
      expectedGap: 0,
      expectedReserve: -3,
      entryAfter: 20,
      verdict: 'one more ring',
      findings: ['ring-set/nose-does-not-reach', 'ring-set/no-reserve'],
    })
  })

  it('a good count may still leave no travel: nose of 8, gap 2, keep clear 3', () => {
    expect(loaded(7, { noseLength: mm(8) })).toMatchObject({ verdict: 'good', expectedGap: 2, findings: ['ring-set/no-reserve'] })
  })
})

describe('what no set is', () => {
  it.each([
    ['no rings', { rings: 0 }, 'number/not-a-count', 'rings'],
    ['minus a ring', { rings: -1 }, 'number/not-a-count', 'rings'],
    ['half a ring', { rings: 2.5 }, 'number/not-a-count', 'rings'],
    ['negative keep clear', { keepClear: mm(-1) }, 'number/negative', 'keepClear'],
    ['a box too shallow', { boxDepth: mm(11) }, 'ring-set/no-ring-fits', 'boxDepth'],
  ])('%s', (_, change, code, field) => {
    expect(ringSet({ ...input, rings: 6, ...change })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('any doubles give finite figures or a named problem', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, anyNumber, (boxDepth, section, noseLength, keepClear) => {
        const set = ringSet({ ...input, boxDepth, section, noseLength, keepClear, rings: 5 } as never)
        if (!set.ok) {
          expect(set.problem.code).toMatch(/\w\/\w/)
          return
        }
        for (const value of Object.values(set)) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
      }),
    )
  })

  const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((value) => mm(value / 10))

  it('the count for the box is good, one fewer asks for one more, one more is one too many', () => {
    fc.assert(
      fc.property(tenths(40, 200), tenths(3, 25), fc.integer({ min: 0, max: 45 }), (boxDepth, section, percent) => {
        const change = { boxDepth, section, consolidation: ratio(percent / 100) }
        const fitting = ringsForBox({ ...input, ...change })
        if (!fitting.ok) throw new Error(fitting.problem.detail)
        expect(loaded(fitting.rings, change).verdict).toBe('good')
        expect(loaded(fitting.rings + 1, change).verdict).toBe('one ring too many')
        if (fitting.rings > 1) expect(loaded(fitting.rings - 1, change).verdict).toBe('one more ring')
      }),
    )
  })

  it('one more ring never lowers the gap, and more consolidation never raises it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 60 }), (rings, percent) => {
        const at = (count: number, share: number) => loaded(count, { consolidation: ratio(share / 100) }).expectedGap
        expect(at(rings + 1, percent)).toBeGreaterThanOrEqual(at(rings, percent))
        expect(at(rings, percent + 1)).toBeLessThanOrEqual(at(rings, percent))
      }),
    )
  })

  it('twice the size gives twice the figures', () => {
    const twice = { boxDepth: mm(96), section: mm(16), noseLength: mm(40), leastEngagement: mm(6.4), keepClear: mm(6) }
    const [small, large] = [loaded(7), loaded(7, twice)]
    for (const name of ['consolidatedHeight', 'expectedGap', 'expectedReserve', 'entry'] as const)
      expect(large[name]).toBeCloseTo(2 * small[name], 9)
  })
})

// @ts-expect-error a bare number is no share
ringSet({ ...input, rings: 6, consolidation: 0.25 })
// @ts-expect-error bar is no length
ringSet({ ...input, rings: 6, keepClear: bar(3) })
