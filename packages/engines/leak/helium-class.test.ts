import { type Millimetre, mm, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { heliumStemLimit } from './helium-class.ts'

describe('the helium limit of a stem', () => {
  it('class AH, 30 mm: 1.78e-7 * 30 = 5.34e-6 mbar·L/s; BH and CH are from memory and say so', () => {
    const of = (heliumClass: 'AH' | 'BH' | 'CH') => heliumStemLimit({ heliumClass, stemDiameter: mm(30) })
    const found = of('AH')
    expect(found.ok && found.limit).toBeCloseTo(5.34e-6, 12)
    expect([of('AH'), of('BH'), of('CH')].map((each) => each.ok && each.mark)).toEqual(['read', 'from memory', 'from memory'])
  })

  it.each([0, -1, Number.NaN, Infinity])('refuses a stem of %d mm', (stemDiameter) => {
    expect(heliumStemLimit({ heliumClass: 'AH', stemDiameter: stemDiameter as Millimetre })).toMatchObject({
      ok: false,
      problem: { code: 'number/not-positive', field: 'stemDiameter' },
    })
  })

  it('takes millimetres, not a bare number or turns', () => {
    // @ts-expect-error a bare number has no unit
    heliumStemLimit({ heliumClass: 'AH', stemDiameter: 20 })
    // @ts-expect-error turns are no length
    heliumStemLimit({ heliumClass: 'AH', stemDiameter: turns(20) })
  })
})
