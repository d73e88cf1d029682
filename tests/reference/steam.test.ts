import { readFileSync } from 'node:fs'
import path from 'node:path'
import { liquidAt } from '@glandkeeper/engines/steam/region1'
import { vapourAt } from '@glandkeeper/engines/steam/region2'
import { saturatedSteam } from '@glandkeeper/engines/steam/saturated-steam'
import { saturationPressure, saturationTemperature } from '@glandkeeper/engines/steam/saturation'
import { barAbsolute, celsius } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

type Figures<Name extends string> = Readonly<Record<Name, number>>
const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/steam.json'), 'utf8')) as {
  saturationPressure: Figures<'T_K' | 'MPa'>[]
  saturationTemperature: Figures<'T_K' | 'MPa'>[]
  region1: Figures<'T_K' | 'MPa' | 'v' | 'h'>[]
  region2: Figures<'T_K' | 'MPa' | 'v' | 'h'>[]
  boundary: Figures<'T_K' | 'MPa'>
  saturated: Figures<'bar' | 'T_C' | 'hf' | 'hfg' | 'vg'>[]
  handbook: Figures<'kPa' | 'T_C' | 'hf' | 'hfg' | 'vg'>[]
  superheated: Figures<'MPa' | 'T_C' | 'v' | 'h'>[]
  triple: Figures<'T_K' | 'Pa'>
}

const fromKelvin = (kelvin: number) => celsius(kelvin - 273.15)
const fromMegapascal = (megapascal: number) => barAbsolute(megapascal * 10)
/** The release prints nine figures: half a unit of the last one, whatever the first is. */
const nineFigures = (found: number, printed: number) => expect(Number(found.toPrecision(9))).toBe(printed)
const within = (found: number, published: number, share: number) => expect(Math.abs(found / published - 1)).toBeLessThan(share)

describe('water and steam against the tables of the release', () => {
  it.each(values.saturationPressure)('Table 35: $T_K K boils at $MPa MPa', ({ T_K, MPa }) => {
    const found = saturationPressure(fromKelvin(T_K))
    nineFigures(found.ok ? found.pressure / 10 : Number.NaN, MPa)
  })

  it.each(values.saturationTemperature)('Table 36: $MPa MPa boils at $T_K K', ({ T_K, MPa }) => {
    const found = saturationTemperature(fromMegapascal(MPa))
    nineFigures(found.ok ? found.temperature + 273.15 : Number.NaN, T_K)
  })

  it.each(values.region1)('Table 5: liquid at $T_K K and $MPa MPa', ({ T_K, MPa, v, h }) => {
    const found = liquidAt({ temperature: fromKelvin(T_K), pressure: fromMegapascal(MPa) })
    nineFigures(found.ok ? found.specificVolume : Number.NaN, v)
    nineFigures(found.ok ? found.enthalpy : Number.NaN, h)
  })

  it.each(values.region2)('Table 15: steam at $T_K K and $MPa MPa', ({ T_K, MPa, v, h }) => {
    const found = vapourAt({ temperature: fromKelvin(T_K), pressure: fromMegapascal(MPa) })
    nineFigures(found.ok ? found.specificVolume : Number.NaN, v)
    nineFigures(found.ok ? found.enthalpy : Number.NaN, h)
  })

  it('section 4: the boundary of steam and the dense region meets the boiling line at 623.15 K and 16.5291643 MPa', () => {
    const { T_K, MPa } = values.boundary
    const known = (megapascal: number) =>
      vapourAt({ temperature: fromKelvin(T_K + 1e-7), pressure: fromMegapascal(megapascal) }).ok
    expect([known(MPa - 1e-6), known(MPa + 1e-6)]).toEqual([true, false])
    const line = saturationPressure(fromKelvin(T_K))
    within(line.ok ? line.pressure / 10 : Number.NaN, MPa, 1e-8)
  })

  it('the triple point: 273.16 K at 611.657 Pa', () => {
    const found = saturationPressure(fromKelvin(values.triple.T_K))
    within(found.ok ? found.pressure * 1e5 : Number.NaN, values.triple.Pa, 1e-6)
  })
})

describe('saturated steam', () => {
  const at = (pressure: number) => {
    const found = saturatedSteam(barAbsolute(pressure))
    if (!found.ok) throw new Error(found.problem.detail)
    return found
  }

  it.each(values.saturated)(
    '$bar bar absolute, as computed from the release, to the printed digits',
    ({ bar, T_C, hf, hfg, vg }) => {
      const found = at(bar)
      expect(found.temperature).toBeCloseTo(T_C, 4)
      expect(found.enthalpyOfWater).toBeCloseTo(hf, 3)
      expect(found.heatOfEvaporation).toBeCloseTo(hfg, 3)
      expect(found.volumeOfSteam).toBeCloseTo(vg, 6)
    },
  )

  it.each(values.handbook)('$kPa kPa in a textbook table made with another formulation (from memory), within 0.1 %', (row) => {
    const found = at(row.kPa / 100)
    expect(found.temperature).toBeCloseTo(row.T_C, 1)
    within(found.enthalpyOfWater, row.hf, 1e-3)
    within(found.heatOfEvaporation, row.hfg, 1e-3)
    within(found.volumeOfSteam, row.vg, 1e-3)
  })

  it.each(values.superheated)('superheated at $MPa MPa and $T_C °C in a textbook table (from memory), within 0.1 %', (row) => {
    const found = vapourAt({ temperature: celsius(row.T_C), pressure: fromMegapascal(row.MPa) })
    within(found.ok ? found.specificVolume : Number.NaN, row.v, 1e-3)
    within(found.ok ? found.enthalpy : Number.NaN, row.h, 1e-3)
  })
})
