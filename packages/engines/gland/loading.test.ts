import { mm, ratio, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loadingVerdict } from './loading.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const input = { gapLeft: mm(8), gapRight: mm(8.4), expectedGap: mm(8), setHeight: mm(36) }
const judged = (change: Partial<Parameters<typeof loadingVerdict>[0]> = {}) => {
  const loading = loadingVerdict({ ...input, ...change })
  if (!loading.ok) throw new Error(loading.problem.detail)
  return loading
}

describe('the gap after loading', () => {
  it('mean 8.2 of 8 expected is good within 5 % of 36 = 1.8', () => {
    const loading = judged()
    expect(loading).toMatchObject({ verdict: 'good', gap: 8.2 })
    expect(loading.difference).toBeCloseTo(0.2, 12)
    expect(loading.allowed).toBeCloseTo(1.8, 12)
    expect(loading.tilt).toBeCloseTo(0.4, 12)
  })

  it('6 of 8 is 2 short: one more ring may fit; 10 of 8 stands 2 too high', () => {
    expect(judged({ gapLeft: mm(6), gapRight: mm(6) })).toMatchObject({ verdict: 'one more ring may fit', difference: -2 })
    expect(judged({ gapLeft: mm(10), gapRight: mm(10) })).toMatchObject({ verdict: 'rings stand too high', difference: 2 })
  })

  it('2 off is good where 6 % of 36 = 2.16 is allowed', () => {
    expect(judged({ gapLeft: mm(10), gapRight: mm(10), tolerance: ratio(0.06) }).verdict).toBe('good')
  })

  it('8 and 8.8 is tilted by more than 0.75 before it is anything else; not where 1 is allowed', () => {
    expect(judged({ gapRight: mm(8.8) }).verdict).toBe('tilted')
    expect(judged({ gapLeft: mm(20), gapRight: mm(28) }).verdict).toBe('tilted')
    expect(judged({ gapRight: mm(8.8), tiltLimit: mm(1) }).verdict).toBe('good')
    expect(judged({ gapRight: mm(8.75) }).verdict).toBe('good')
  })

  it('one side read stands for both, without a tilt', () => {
    expect(judged({ gapLeft: null })).toMatchObject({ gap: 8.4, tilt: null })
    expect(judged({ gapRight: null })).toMatchObject({ gap: 8, tilt: null })
  })

  it.each([
    ['neither side', { gapLeft: null, gapRight: null }, 'loading/no-gap', 'gapLeft'],
    ['a negative left gap', { gapLeft: mm(-1) }, 'number/negative', 'gapLeft'],
    ['a negative right gap alone', { gapLeft: null, gapRight: mm(-1) }, 'number/negative', 'gapRight'],
    ['a negative expectation', { expectedGap: mm(-1) }, 'number/negative', 'expectedGap'],
    ['a set of no height', { setHeight: mm(0) }, 'number/not-positive', 'setHeight'],
    ['a tolerance of the whole', { tolerance: ratio(1) }, 'number/not-a-share', 'tolerance'],
    ['a negative limit of tilt', { tiltLimit: mm(-1) }, 'number/negative', 'tiltLimit'],
  ])('is not judged from %s', (_, change, code, field) => {
    expect(loadingVerdict({ ...input, ...change })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('any doubles give a verdict or a named problem', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, anyNumber, anyNumber, (gapLeft, gapRight, expectedGap, setHeight) => {
        const loading = loadingVerdict({ gapLeft, gapRight, expectedGap, setHeight } as never)
        if (!loading.ok) {
          expect(loading.problem.code).toMatch(/\w\/\w/)
          return
        }
        expect(Number.isFinite(loading.difference)).toBe(true)
      }),
    )
  })

  it('left and right may be swapped, and a wider gap never turns from too high to short', () => {
    const gap = fc.double({ min: 0, max: 40, noNaN: true })
    const order = ['one more ring may fit', 'good', 'rings stand too high']
    fc.assert(
      fc.property(gap, gap, (one, other) => {
        const [a, b] = [judged({ gapLeft: mm(one), gapRight: mm(other) }), judged({ gapLeft: mm(other), gapRight: mm(one) })]
        expect(a).toEqual(b)
        const rank = (value: number) => order.indexOf(judged({ gapLeft: mm(value), gapRight: null }).verdict)
        expect(rank(Math.max(one, other))).toBeGreaterThanOrEqual(rank(Math.min(one, other)))
      }),
    )
  })
})

// @ts-expect-error a bare number is no gap
loadingVerdict({ ...input, gapLeft: 8 })
// @ts-expect-error turns are no gap
loadingVerdict({ ...input, expectedGap: turns(8) })
