import { bar, type BarAbsolute, barAbsolute, type Celsius, celsius } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { liquidAt } from './region1.ts'
import { vapourAt } from './region2.ts'
import { saturatedSteam } from './saturated-steam.ts'
import { saturationPressure, saturationTemperature } from './saturation.ts'

const boiling = fc.double({ min: 0.0061121267744, max: 220.64, noNaN: true })
const inTable = fc.double({ min: 0.0061121267744, max: 165.2916, noNaN: true })
const row = (pressure: number) => {
  const found = saturatedSteam(barAbsolute(pressure))
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('the boiling line', () => {
  it('is the same line from either side, to nine digits', () => {
    fc.assert(
      fc.property(boiling, (pressure) => {
        const at = saturationTemperature(barAbsolute(pressure))
        const back = at.ok ? saturationPressure(at.temperature) : at
        expect(back.ok && Math.abs(back.pressure / pressure - 1)).toBeLessThan(1e-9)
      }),
    )
  })

  it('takes at its ends what it gives there', () => {
    for (const temperature of [0, 373.946]) {
      const pressure = saturationPressure(celsius(temperature))
      const back = pressure.ok ? saturationTemperature(pressure.pressure) : pressure
      expect(back.ok && back.temperature).toBeCloseTo(temperature, 6)
    }
  })

  it.each([-0.001, 373.947, Number.NaN, Infinity])('refuses %d °C', (temperature) => {
    const found = saturationPressure(temperature as Celsius)
    expect(found).toMatchObject({ ok: false, problem: { code: 'steam/outside-range', field: 'temperature' } })
  })

  it.each([0, -1, 0.0061, 220.65, Number.NaN, Infinity])('refuses %d bar absolute', (pressure) => {
    const found = saturationTemperature(pressure as BarAbsolute)
    expect(found).toMatchObject({ ok: false, problem: { code: 'steam/outside-range', field: 'pressure' } })
  })
})

describe('the steam table', () => {
  it('at every pressure: heat of steam is heat of water and of evaporation together, and steam takes more room', () => {
    fc.assert(
      fc.property(inTable, (pressure) => {
        const found = row(pressure)
        expect(found.enthalpyOfWater + found.heatOfEvaporation).toBeCloseTo(found.enthalpyOfSteam, 9)
        expect(found.volumeOfSteam).toBeGreaterThan(found.volumeOfWater)
      }),
    )
  })

  it('with pressure: hotter, more heat in the water, less to evaporate, less room for the steam', () => {
    fc.assert(
      fc.property(inTable, inTable, (one, other) => {
        fc.pre(Math.abs(one - other) > 1e-6)
        const [low, high] = one < other ? [row(one), row(other)] : [row(other), row(one)]
        expect(high.temperature).toBeGreaterThan(low.temperature)
        expect(high.enthalpyOfWater).toBeGreaterThan(low.enthalpyOfWater)
        expect(high.heatOfEvaporation).toBeLessThan(low.heatOfEvaporation)
        expect(high.volumeOfSteam).toBeLessThan(low.volumeOfSteam)
      }),
    )
  })

  it('obeys Clausius and Clapeyron: heat of evaporation = T dp/dT (v steam - v water), to a part in a thousand', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 160, noNaN: true }), (pressure) => {
        const found = row(pressure)
        const at = (temperature: number) => {
          const near = saturationPressure(celsius(temperature))
          return near.ok ? near.pressure : Number.NaN
        }
        const slope = (at(found.temperature + 0.01) - at(found.temperature - 0.01)) / 0.02
        // bar times m³/kg is 100 kJ/kg.
        const heat = (found.temperature + 273.15) * slope * (found.volumeOfSteam - found.volumeOfWater) * 100
        expect(heat / found.heatOfEvaporation).toBeCloseTo(1, 3)
      }),
    )
  })

  it.each([0, -1, 165.3, 220, Number.NaN])('refuses %d bar absolute', (pressure) => {
    const found = saturatedSteam(pressure as BarAbsolute)
    expect(found).toMatchObject({ ok: false, problem: { code: 'steam/outside-range', field: 'pressure' } })
  })
})

describe('liquid and steam', () => {
  it.each([
    ['water that boils', liquidAt, 100, 1, 'steam/not-liquid', 'pressure'],
    ['liquid at 351 °C', liquidAt, 351, 500, 'steam/outside-range', 'temperature'],
    ['liquid at 1,001 bar', liquidAt, 20, 1001, 'steam/outside-range', 'pressure'],
    ['liquid at NaN', liquidAt, 20, Number.NaN, 'steam/outside-range', 'pressure'],
    ['steam that would be water', vapourAt, 100, 1.1, 'steam/not-vapour', 'pressure'],
    ['steam in the dense region', vapourAt, 400, 300, 'steam/not-vapour', 'pressure'],
    ['steam at 801 °C', vapourAt, 801, 10, 'steam/outside-range', 'temperature'],
    ['steam at 1,001 bar', vapourAt, 700, 1001, 'steam/not-vapour', 'pressure'],
    ['steam in a vacuum', vapourAt, 100, 0, 'steam/outside-range', 'pressure'],
    ['steam at NaN', vapourAt, Number.NaN, 1, 'steam/outside-range', 'temperature'],
  ])('refuse %s', (_, state, temperature, pressure, code, field) => {
    const found = state({ temperature: temperature as Celsius, pressure: pressure as BarAbsolute })
    expect(found).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('the dense region begins at 165.2916 bar just above 350 °C, and at 1,000 bar at 590 °C', () => {
    const known = (temperature: number, pressure: number) =>
      vapourAt({ temperature: celsius(temperature), pressure: barAbsolute(pressure) }).ok
    expect([known(350.000001, 165.2916), known(350.000001, 165.2918)]).toEqual([true, false])
    expect([known(589.9, 999), known(590.1, 1000), known(589.5, 999)]).toEqual([true, true, false])
  })

  it.each([
    ['liquid', liquidAt],
    ['steam', vapourAt],
  ])('%s gives finite figures or a named problem for any doubles', (_, state) => {
    const number = fc.oneof(fc.double(), fc.double({ min: 0, max: 1100 }), fc.constantFrom(0, -0, 5e-324, 1e308, Infinity))
    fc.assert(
      fc.property(number, number, (temperature, pressure) => {
        const found = state({ temperature: temperature as Celsius, pressure: pressure as BarAbsolute })
        if (!found.ok) expect(found.problem.code).toMatch(/^steam\/[a-z-]+$/)
        else
          expect([found.specificVolume > 0, found.specificVolume < Infinity, Number.isFinite(found.enthalpy)]).toEqual([
            true,
            true,
            true,
          ])
      }),
      { numRuns: 500 },
    )
  })

  it('take absolute pressure, not a bare number or a gauge reading', () => {
    // @ts-expect-error a bare number has no unit
    saturatedSteam(10)
    // @ts-expect-error a gauge shows bar above atmosphere
    saturatedSteam(bar(10))
  })
})
