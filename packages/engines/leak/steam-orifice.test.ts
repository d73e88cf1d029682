import { inchesToMillimetres, psiToBar } from '@glandkeeper/units/convert'
import { absolute, bar, type BarAbsolute, barAbsolute, type Millimetre, mm, mm2 } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Opening } from './opening.ts'
import { steamByEachMethod, type SteamMethod, steamThroughOpening } from './steam-orifice.ts'

const flow = (method: SteamMethod, opening: Opening, pressure: BarAbsolute) => {
  const found = steamThroughOpening({ method, opening, pressure })
  if (!found.ok) throw new Error(found.problem.detail)
  return found.flow
}

describe('steam through an opening', () => {
  it('Napier: 0.52444 * 2 mm² * 11 bar = 11.5376 kg/h', () => {
    expect(flow('Napier', { area: mm2(2) }, barAbsolute(11))).toBeCloseTo(11.5376, 3)
  })

  it('24.24 form: 24.24 * 100 psi * (1/8 in)² = 37.875 lb/h = 17.1798 kg/h', () => {
    const found = flow('24.24 form', { diameter: inchesToMillimetres(0.125) }, barAbsolute(psiToBar(100)))
    expect(found).toBeCloseTo(37.875 * 0.45359237, 9)
  })

  it('discharge 0.73: 0.73 * 11.5376 = 8.4225 kg/h', () => {
    expect(flow('discharge 0.73', { area: mm2(2) }, barAbsolute(11))).toBeCloseTo(8.4225, 3)
  })

  it('side by side: the most first, each with its name, coefficient and bounds', () => {
    const found = steamByEachMethod({ opening: { diameter: mm(1) }, pressure: barAbsolute(8) })
    const figures = found.ok ? found.figures : []
    expect(figures.map(({ method, coefficient }) => [method, coefficient])).toEqual([
      ['Napier', 1],
      ['discharge 0.73', 0.73],
      ['24.24 form', 0.6],
    ])
    for (const [index, figure] of figures.entries()) {
      expect(figure.validity).toContain('below 0.58')
      expect(figure.flow / figures[0]!.flow).toBeCloseTo(figure.coefficient, 3)
      if (index > 0) expect(figure.flow).toBeLessThan(figures[index - 1]!.flow)
    }
  })

  it.each([
    ['not critical: 1.01325 / 1.5 = 0.68', { pressure: 1.5 }, 'leak/not-critical', 'pressure'],
    ['the very ratio 0.58 is not below it', { pressure: 10, downstreamPressure: 5.8 }, 'leak/not-critical', 'pressure'],
    ['NaN behind', { pressure: 10, downstreamPressure: Number.NaN }, 'number/negative', 'downstreamPressure'],
    ['below vacuum behind', { pressure: 10, downstreamPressure: -1 }, 'number/negative', 'downstreamPressure'],
    ['NaN before', { pressure: Number.NaN }, 'number/not-positive', 'pressure'],
    ['no saturated steam at 221 bar', { pressure: 221 }, 'leak/no-saturated-steam', 'pressure'],
  ])('refuses %s', (_, pressures, code, field) => {
    const input = { method: 'Napier', opening: { diameter: mm(1) }, ...pressures } as Parameters<typeof steamThroughOpening>[0]
    expect(steamThroughOpening(input)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('refuses an opening of nothing, and says which input it was', () => {
    const pressure = barAbsolute(8)
    const refusal = (opening: Opening) => steamByEachMethod({ opening, pressure })
    expect(refusal({ diameter: mm(0) })).toMatchObject({ problem: { code: 'number/not-positive', field: 'diameter' } })
    expect(refusal({ area: mm2(-1) })).toMatchObject({ problem: { code: 'number/not-positive', field: 'area' } })
    expect(refusal({ diameter: 1e200 as Millimetre })).toMatchObject({
      problem: { code: 'number/out-of-range', field: 'diameter' },
    })
  })

  it('grows with the square of the diameter and with the absolute pressure; diameter and area agree', () => {
    const diameter = fc.double({ min: 0.1, max: 20, noNaN: true })
    fc.assert(
      fc.property(diameter, fc.double({ min: 2, max: 100, noNaN: true }), (wide, pressure) => {
        const one = flow('Napier', { diameter: mm(wide) }, barAbsolute(pressure))
        expect(flow('Napier', { diameter: mm(2 * wide) }, barAbsolute(pressure)) / one).toBeCloseTo(4, 9)
        expect(flow('Napier', { diameter: mm(wide) }, barAbsolute(2 * pressure)) / one).toBeCloseTo(2, 9)
        expect(flow('Napier', { area: mm2((Math.PI / 4) * wide ** 2) }, barAbsolute(pressure)) / one).toBeCloseTo(1, 9)
      }),
    )
  })

  it('takes an absolute pressure, not a bare number or a gauge reading', () => {
    // @ts-expect-error a bare number has no unit
    steamThroughOpening({ method: 'Napier', opening: { diameter: mm(1) }, pressure: 8 })
    // @ts-expect-error a gauge shows bar above atmosphere
    steamThroughOpening({ method: 'Napier', opening: { diameter: mm(1) }, pressure: bar(7) })
    expect(flow('Napier', { diameter: mm(1) }, absolute(bar(7)))).toBeGreaterThan(0)
  })
})
