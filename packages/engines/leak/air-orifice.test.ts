import { bar, type BarAbsolute, barAbsolute, celsius, mm, mm2, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { airCoefficients, airThroughOpening } from './air-orifice.ts'

type AirInput = Parameters<typeof airThroughOpening>[0]
const base: AirInput = { opening: { area: mm2(1) }, pressure: barAbsolute(8), coefficient: ratio(1) }
const through = (input: Partial<AirInput>) => {
  const found = airThroughOpening({ ...base, ...input })
  if (!found.ok) throw new Error(found.problem.code)
  return found
}

describe('air through an opening', () => {
  it('1 mm² * 8e5 Pa * 0.684731 / sqrt(287.05 * 300) = 1.866684e-3 kg/s = 6.72006 kg/h', () => {
    expect(through({ temperature: celsius(26.85) }).mass).toBeCloseTo(6.72006, 4)
  })

  it('free air: 6.72006 kg/h at 287.05 * 288.706 K / 101325 Pa = 0.817896 m³/kg is 5.4963 m³/h or 3.2350 cfm', () => {
    const found = through({ temperature: celsius(26.85) })
    expect(found.freeAir).toBeCloseTo(5.4963, 3)
    expect(found.freeAirCubicFeet).toBeCloseTo(3.235, 3)
  })

  it.each([
    ['1.01325 / 1.9 = 0.533: not choked', { pressure: barAbsolute(1.9) }, 'leak/not-critical', 'pressure'],
    ['5 of 9 bar: not choked', { pressure: barAbsolute(9), downstreamPressure: barAbsolute(5) }, 'leak/not-critical', 'pressure'],
    ['NaN before', { pressure: Number.NaN as BarAbsolute }, 'number/not-positive', 'pressure'],
    ['NaN behind', { downstreamPressure: Number.NaN as BarAbsolute }, 'number/negative', 'downstreamPressure'],
    ['no coefficient', { coefficient: ratio(0) }, 'number/not-positive', 'coefficient'],
    ['absolute zero', { temperature: celsius(-273.15) }, 'number/out-of-range', 'temperature'],
    ['no opening', { opening: { diameter: mm(0) } }, 'number/not-positive', 'diameter'],
  ])('refuses %s', (_, wrong, code, field) => {
    expect(airThroughOpening({ ...base, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('holds just above the critical pressure: 1.01325 / 0.528 = 1.919', () => {
    expect(airThroughOpening({ ...base, pressure: barAbsolute(1.92) }).ok).toBe(true)
  })

  it('grows with area, pressure and coefficient, and falls with the root of the temperature', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (pressure, area) => {
          const input = { pressure: barAbsolute(pressure), opening: { area: mm2(area) } }
          const one = through(input).mass
          expect(through({ ...input, pressure: barAbsolute(2 * pressure) }).mass / one).toBeCloseTo(2, 9)
          expect(through({ ...input, opening: { area: mm2(3 * area) } }).mass / one).toBeCloseTo(3, 9)
          expect(through({ ...input, coefficient: airCoefficients['sharp edged'] }).mass / one).toBeCloseTo(0.65, 9)
          const cold = through({ ...input, temperature: celsius(0) }).mass
          expect(cold / through({ ...input, temperature: celsius(3 * 273.15) }).mass).toBeCloseTo(2, 9)
        },
      ),
    )
  })

  it('takes an absolute pressure, not a bare number or a gauge reading', () => {
    // @ts-expect-error a bare number has no unit
    airThroughOpening({ ...base, pressure: 8 })
    // @ts-expect-error a gauge shows bar above atmosphere
    airThroughOpening({ ...base, pressure: bar(7) })
  })
})
