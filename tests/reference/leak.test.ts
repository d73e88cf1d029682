import { readFileSync } from 'node:fs'
import path from 'node:path'
import { airThroughOpening } from '@glandkeeper/engines/leak/air-orifice'
import { dropVolumes, litresOfDrops } from '@glandkeeper/engines/leak/drops'
import { heliumStemLimit } from '@glandkeeper/engines/leak/helium-class'
import { money } from '@glandkeeper/engines/leak/leak-quantity'
import { rateOfScreening, type ScreenedService, type Screening } from '@glandkeeper/engines/leak/screening'
import { type SteamMethod, steamThroughOpening } from '@glandkeeper/engines/leak/steam-orifice'
import { waterThroughOpening } from '@glandkeeper/engines/leak/water-orifice'
import { yearlySteamCost } from '@glandkeeper/engines/leak/yearly-cost'
import { inchesToMillimetres, psiToBar } from '@glandkeeper/units/convert'
import { bar, barAbsolute, celsius, kilogramsPerHour, mm, mm2, ppmv, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

type Figures = Readonly<Record<string, number>>
interface Row {
  readonly id: string
  readonly inputs: Figures
  readonly output: Figures
}
type Measured = Readonly<
  Record<'diameter_in' | 'diameter_mm' | 'dia_in' | 'psig' | 'psi' | 'bar' | 'lbh' | 'Lh' | 'gpm' | 'cfm' | 'coefficient', number>
> & {
  readonly mark: string
}
const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/leak.json'), 'utf8')) as {
  screening: Row[]
  defaultZero: Row[]
  drops: Row[]
  dropsPerGallon: { id: string; drop: string; dropsPerLitre: number; dropsPerUsGallon: number }[]
  steam: Row[]
  steamTable: Measured[]
  steamCost: { id: string; inputs: Figures; output: number }[]
  air: { id: string; inputs: Figures; output: number }[]
  airChoked: Measured[]
  airTipSheet: Measured[]
  water: Measured[]
  nozzles: Measured[]
  helium: Row[]
}
const KILOGRAMS_PER_POUND = 0.45359237
const LITRES_PER_US_GALLON = 3.785411784

/** The given tables were made with 14.7 psi for the atmosphere. */
const psiAbsolute = (gauge: number) => barAbsolute(psiToBar(gauge + 14.7))
const within = (found: number, published: number, share: number) => expect(Math.abs(found / published - 1)).toBeLessThan(share)

function steamPounds(method: SteamMethod, diameterInches: number, psig: number): number {
  const opening = { diameter: inchesToMillimetres(diameterInches) }
  const found = steamThroughOpening({ method, opening, pressure: psiAbsolute(psig) })
  return found.ok ? found.flow / KILOGRAMS_PER_POUND : Number.NaN
}

function airCubicFeet(diameterInches: number, psig: number): number {
  const opening = { diameter: inchesToMillimetres(diameterInches) }
  const found = airThroughOpening({ opening, pressure: psiAbsolute(psig), coefficient: ratio(1) })
  return found.ok ? found.freeAirCubicFeet : Number.NaN
}

describe('screening values against the published correlations', () => {
  const services: readonly (readonly [string, ScreenedService])[] = [
    ['socmi_gas', 'SOCMI gas valve'],
    ['socmi_ll', 'SOCMI light liquid valve'],
    ['petroleum', 'petroleum industry valve'],
  ]
  const rate = (service: ScreenedService, screening: Screening) => {
    const found = rateOfScreening({ service, screening })
    return found.ok ? found.rate : Number.NaN
  }

  it.each(values.screening)('$id', ({ inputs, output }) => {
    for (const [key, service] of services) within(rate(service, { screeningValue: ppmv(inputs['SV_ppmv']!) }), output[key]!, 1e-5)
  })

  it('default zero of SOCMI gas and petroleum valves', () => {
    const [{ output }] = values.defaultZero as [Row]
    expect(rate('SOCMI gas valve', { screeningValue: ppmv(0) })).toBe(output['socmi_gas'])
    expect(rate('petroleum industry valve', { screeningValue: ppmv(0) })).toBe(output['petroleum_valve'])
  })

  it('default zero of light liquid and pegged factors: from memory, arithmetic only', () => {
    expect(rate('SOCMI light liquid valve', { screeningValue: ppmv(0) })).toBe(values.defaultZero[0]!.output['socmi_ll'])
    const pegged = ([10_000, 100_000] as const).map((peggedAt) => services.map(([, service]) => rate(service, { peggedAt })))
    expect(pegged).toEqual([
      [0.024, 0.036, 0.064],
      [0.11, 0.15, 0.14],
    ])
  })

  it('a Californian guideline of 1999, 2.27e-6 SV^0.747 for petroleum valves (from memory), lies within 1 %', () => {
    for (const ppm of [100, 1000, 10_000]) {
      within(rate('petroleum industry valve', { screeningValue: ppmv(ppm) }), 2.27e-6 * ppm ** 0.747, 0.01)
    }
  })
})

describe('drops against the published volumes', () => {
  it.each(values.drops)('$id', ({ inputs, output }) => {
    const litres = dropVolumes.map(({ volume }) => {
      const found = litresOfDrops({ dropsPerMinute: inputs['drops_per_min']!, dropVolume: volume })
      return found.ok ? found.perDay : Number.NaN
    })
    for (const [index, key] of ['V0.25mL', 'V1/3mL', 'V0.05mL'].entries()) expect(litres[index]).toBeCloseTo(output[key]!, 9)
  })

  it.each(values.dropsPerGallon)('$id: so many drops a litre and a US gallon', ({ drop, dropsPerLitre, dropsPerUsGallon }) => {
    const dropVolume = dropVolumes.find(({ name }) => name === drop)!.volume
    const litres = (drops: number) => {
      const found = litresOfDrops({ dropsPerMinute: drops / 1440, dropVolume })
      return found.ok ? found.perDay : Number.NaN
    }
    expect(litres(dropsPerLitre)).toBeCloseTo(1, 9)
    within(litres(dropsPerUsGallon), LITRES_PER_US_GALLON, 1e-3)
  })
})

describe('steam against published formulas and tables', () => {
  it.each(values.steam)('$id: 24.24 form, and Napier (51.43 from memory: arithmetic only)', ({ inputs, output }) => {
    const { dia_in, psig } = inputs as { dia_in: number; psig: number }
    within(steamPounds('24.24 form', dia_in, psig), output['24.24pd2_lbh']!, 1e-3)
    within(steamPounds('Napier', dia_in, psig), output['napier_lbh']!, 1e-3)
    within(output['doe_table_lbh']! / steamPounds('Napier', dia_in, psig), output['implied_Cd']!, 1e-3)
  })

  it.each(values.steamTable.filter(({ mark }) => mark === 'read'))(
    'tip sheet table, $diameter_in in at $psig psi: $lbh lb/h by discharge 0.73, within 1.5 %',
    ({ diameter_in, psig, lbh }) => within(steamPounds('discharge 0.73', diameter_in, psig), lbh, 0.015),
  )

  it.each(values.steamTable.filter(({ mark }) => mark === 'memory'))(
    'tip sheet table, $diameter_in in at $psig psi: $lbh lb/h, from memory: arithmetic only',
    ({ diameter_in, psig, lbh }) => within(steamPounds('discharge 0.73', diameter_in, psig), lbh, 0.015),
  )

  it('metric Napier: 0.52444 kg/h for a mm² and a bar absolute', () => {
    const found = steamThroughOpening({ method: 'Napier', opening: { area: mm2(1) }, pressure: barAbsolute(10) })
    expect(found.ok && found.flow / 10).toBeCloseTo(0.52444, 5)
  })

  it('Grashof, 0.0165 A p^0.97 in lb/s, in², psi absolute (Marks, Standard Handbook; from memory), agrees within 4 %', () => {
    for (const psia of [40, 100, 150, 220]) {
      const napier = steamThroughOpening({
        method: 'Napier',
        opening: { area: mm2(645.16) },
        pressure: barAbsolute(psiToBar(psia)),
      })
      within(napier.ok ? napier.flow / KILOGRAMS_PER_POUND / 3600 : Number.NaN, 0.0165 * psia ** 0.97, 0.04)
    }
  })

  it.each(values.steamCost)('$id: the worked example of the tip sheet', ({ inputs, output }) => {
    const found = yearlySteamCost({
      flow: kilogramsPerHour(inputs['lbh']! * KILOGRAMS_PER_POUND),
      pricePerTonne: money(inputs['usd_per_klb']! / KILOGRAMS_PER_POUND),
    })
    expect(Math.abs((found.ok ? found.cost : Number.NaN) - output)).toBeLessThan(0.5)
  })
})

describe('air against published charts', () => {
  it.each(values.air)('$id: the chart, within 1 %', ({ inputs, output }) => {
    within(airCubicFeet(inputs['dia_in']!, inputs['psig']!), output, 0.01)
  })

  it.each(values.airChoked)('$dia_in in at $psig psi: $cfm cfm as computed from choked flow', ({ dia_in, psig, cfm }) => {
    within(airCubicFeet(dia_in, psig), cfm, 1e-3)
  })

  it.each(values.airTipSheet)(
    '$dia_in in at $psig psi: $cfm cfm of a public tip sheet (from memory), within 3 %',
    ({ dia_in, psig, cfm }) => {
      within(airCubicFeet(dia_in, psig), cfm, 0.03)
    },
  )

  it('textbook constants of choked air (from memory): 0.0404 in SI units, 0.532 of Fliegner in lb, in², °R', () => {
    const pressure = barAbsolute(10)
    const found = airThroughOpening({ opening: { area: mm2(1) }, pressure, coefficient: ratio(1), temperature: celsius(26.85) })
    const kilogramsPerSecond = found.ok ? found.mass / 3600 : Number.NaN
    within((kilogramsPerSecond * Math.sqrt(300)) / (1e-6 * 10e5), 0.0404, 1e-3)
    const pounds = kilogramsPerSecond / KILOGRAMS_PER_POUND
    within((pounds * Math.sqrt(540)) / ((1 / 645.16) * (10 / psiToBar(1))), 0.532, 1e-3)
  })
})

describe('water against published figures', () => {
  it.each(values.water)('$diameter_mm mm at $bar bar: $Lh L/h', ({ diameter_mm, bar: drop, Lh }) => {
    const found = waterThroughOpening({ opening: { diameter: mm(diameter_mm) }, pressureDrop: bar(drop) })
    within(found.ok ? found.perHour : Number.NaN, Lh, 5e-5)
  })

  it('1 mm at 10 bar: 1,852.8 L a day', () => {
    const found = waterThroughOpening({ opening: { diameter: mm(1) }, pressureDrop: bar(10) })
    expect(found.ok && found.perDay).toBeCloseTo(1852.8, 1)
  })

  it.each(values.nozzles)(
    'fire nozzle $diameter_in in at $psi psi, coefficient $coefficient: $gpm gal/min (from memory)',
    ({ diameter_in, psi, coefficient, gpm }) => {
      const opening = { diameter: inchesToMillimetres(diameter_in) }
      const found = waterThroughOpening({ opening, pressureDrop: bar(psiToBar(psi)), coefficient: ratio(coefficient) })
      within(found.ok ? found.perHour / 60 / LITRES_PER_US_GALLON : Number.NaN, gpm, 2e-3)
    },
  )
})

describe('helium classes', () => {
  const limit = (heliumClass: 'AH' | 'BH' | 'CH', stem: number) => {
    const found = heliumStemLimit({ heliumClass, stemDiameter: mm(stem) })
    return found.ok ? found.limit : Number.NaN
  }

  it.each(values.helium)('$id: AH', ({ inputs, output }) => within(limit('AH', inputs['stem_mm']!), output['AH']!, 1e-3))

  it.each(values.helium)('$id: BH and CH from memory: arithmetic only', ({ inputs, output }) => {
    within(limit('BH', inputs['stem_mm']!), output['BH']!, 1e-3)
    within(limit('CH', inputs['stem_mm']!), output['CH']!, 1e-3)
  })

  it('AH is 1e-5 mg/(s m) of stem perimeter at 0 °C: 1.7826e-7 mbar·L/s per mm', () => {
    const molesPerSecond = (1e-5 * 1e-3 * Math.PI * 1e-3) / 4.002602
    within(limit('AH', 1), (molesPerSecond * 8.314462618 * 273.15) / 0.1, 2e-3)
  })
})
