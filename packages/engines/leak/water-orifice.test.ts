import { type Bar, bar, barAbsolute, mm, mm2, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { kilogramsPerCubicMetre } from './leak-quantity.ts'
import { waterThroughOpening } from './water-orifice.ts'

const perHour = (diameter: number, pressureDrop: number) => {
  const found = waterThroughOpening({ opening: { diameter: mm(diameter) }, pressureDrop: bar(pressureDrop) })
  return found.ok ? found.perHour : Number.NaN
}

describe('water through an opening', () => {
  it('0.5 * 1 mm² * sqrt(2 * 5e5 / 1000) = 31.6228 m/s gives 56.921 L/h, 1366.10 L a day, 56.921 kg/h', () => {
    const found = waterThroughOpening({
      opening: { area: mm2(1) },
      pressureDrop: bar(5),
      coefficient: ratio(0.5),
      density: kilogramsPerCubicMetre(1000),
    })
    const expected = 0.5 * 31.6227766 * 3.6
    expect(found).toMatchObject({ ok: true })
    if (!found.ok) return
    expect(found.perHour).toBeCloseTo(expected, 6)
    expect(found.perDay).toBeCloseTo(expected * 24, 5)
    expect(found.mass).toBeCloseTo(expected, 6)
  })

  it.each([
    ['pressureDrop', { pressureDrop: 0 as Bar }],
    ['pressureDrop', { pressureDrop: Number.NaN as Bar }],
    ['coefficient', { coefficient: ratio(0) }],
    ['density', { density: kilogramsPerCubicMetre(-1) }],
    ['diameter', { opening: { diameter: mm(-1) } }],
  ])('refuses a %s that is not above nought', (field, wrong) => {
    const input = { opening: { diameter: mm(1) }, pressureDrop: bar(5), ...wrong }
    expect(waterThroughOpening(input)).toMatchObject({ ok: false, problem: { code: 'number/not-positive', field } })
  })

  it('grows with the square of the diameter and the root of the pressure', () => {
    const number = fc.double({ min: 0.1, max: 50, noNaN: true })
    fc.assert(
      fc.property(number, number, (diameter, drop) => {
        expect(perHour(2 * diameter, drop) / perHour(diameter, drop)).toBeCloseTo(4, 9)
        expect(perHour(diameter, 4 * drop) / perHour(diameter, drop)).toBeCloseTo(2, 9)
      }),
    )
  })

  it('takes a pressure difference in bar, not a bare number or an absolute pressure', () => {
    // @ts-expect-error a bare number has no unit
    waterThroughOpening({ opening: { diameter: mm(1) }, pressureDrop: 5 })
    // @ts-expect-error an absolute pressure is not what drives it
    waterThroughOpening({ opening: { diameter: mm(1) }, pressureDrop: barAbsolute(5) })
  })
})
