import { bar, megapascals, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { requiredStress, usualStressRules } from './required-stress.ts'

describe('required gland stress', () => {
  it('at 250 bar is 37.5 MPa: 1.5 · 25 MPa, above the least of 26.2', () => {
    expect(requiredStress({ systemPressure: bar(250), ...usualStressRules['die-formed'] })).toEqual({
      ok: true,
      requiredStress: 37.5,
      setBy: 'pressure',
    })
  })

  it('at low pressure and under vacuum is the least stress', () => {
    for (const pressure of [0, 10, -0.9])
      expect(requiredStress({ systemPressure: bar(pressure), ...usualStressRules.braided })).toMatchObject({
        requiredStress: 37.92,
        setBy: 'least stress',
      })
  })

  it('never falls when the pressure rises', () => {
    const at = (pressure: number) => requiredStress({ systemPressure: bar(pressure), ...usualStressRules.braided })
    fc.assert(
      fc.property(fc.double({ min: 0, max: 700, noNaN: true }), fc.double({ min: 0, max: 700, noNaN: true }), (one, other) => {
        const [low, high] = [at(Math.min(one, other)), at(Math.max(one, other))]
        return low.ok && high.ok && low.requiredStress <= high.requiredStress
      }),
    )
  })

  it.each([
    [{ systemPressure: bar(-2) }, 'pressure/below-vacuum', 'systemPressure'],
    [{ pressureFactor: ratio(0) }, 'number/not-positive', 'pressureFactor'],
    [{ leastStress: megapascals(-1) }, 'number/negative', 'leastStress'],
    [{ systemPressure: bar(Number.MAX_VALUE), pressureFactor: ratio(100) }, 'number/out-of-range', 'systemPressure'],
  ])('refuses %o', (wrong, code, field) => {
    const input = { systemPressure: bar(40), ...usualStressRules.braided, ...wrong }
    expect(requiredStress(input)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('takes bar above atmosphere only', () => {
    // @ts-expect-error megapascals are no pressure of a system here
    requiredStress({ systemPressure: megapascals(4), ...usualStressRules.braided })
    // @ts-expect-error a bare number is no pressure
    requiredStress({ systemPressure: 40, ...usualStressRules.braided })
  })
})
