import type {
  Bar,
  BarAbsolute,
  Celsius,
  KilogramPerHour,
  LitrePerDay,
  Millilitre,
  Millimetre,
  Ppmv,
  Ratio,
  SquareMillimetre,
} from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { KilojoulePerKilogram } from '../steam/steam-quantity.ts'
import { airThroughOpening } from './air-orifice.ts'
import { litresOfDrops } from './drops.ts'
import { heliumStemLimit } from './helium-class.ts'
import type {
  CubicMetrePerHour,
  HourPerYear,
  KilogramCarbonDioxidePerKilowattHour,
  KilogramPerCubicMetre,
  KilowattHourPerYear,
  Money,
} from './leak-quantity.ts'
import { areaOfOpening } from './opening.ts'
import { rateOfScreening } from './screening.ts'
import { steamByEachMethod, steamThroughOpening } from './steam-orifice.ts'
import { waterThroughOpening } from './water-orifice.ts'
import { yearlyAirCost, yearlyCarbon, yearlyFuelCost, yearlySteamCost, yearlyWaterCost } from './yearly-cost.ts'

/** Any double at all, or one a plant could see, so that both roads are walked. */
const number = fc.oneof(
  fc.double(),
  fc.double({ min: 0, max: 1000 }),
  fc.constantFrom(0, -0, 1e308, 5e-324, Infinity, Number.NaN),
)

const engines: Readonly<Record<string, (...n: [number, number, number, number, number, number]) => object>> = {
  areaOfOpening: (a) => areaOfOpening({ diameter: a as Millimetre }),
  litresOfDrops: (a, b) => litresOfDrops({ dropsPerMinute: a, dropVolume: b as Millilitre }),
  steamThroughOpening: (a, b, c) =>
    steamThroughOpening({
      method: '24.24 form',
      opening: { diameter: a as Millimetre },
      pressure: b as BarAbsolute,
      downstreamPressure: c as BarAbsolute,
    }),
  steamByEachMethod: (a, b) => steamByEachMethod({ opening: { area: a as SquareMillimetre }, pressure: b as BarAbsolute }),
  waterThroughOpening: (a, b, c, d) =>
    waterThroughOpening({
      opening: { area: a as SquareMillimetre },
      pressureDrop: b as Bar,
      coefficient: c as Ratio,
      density: d as KilogramPerCubicMetre,
    }),
  airThroughOpening: (a, b, c, d, e) =>
    airThroughOpening({
      opening: { diameter: a as Millimetre },
      pressure: b as BarAbsolute,
      coefficient: c as Ratio,
      temperature: d as Celsius,
      downstreamPressure: e as BarAbsolute,
    }),
  rateOfScreening: (a) => rateOfScreening({ service: 'SOCMI gas valve', screening: { screeningValue: a as Ppmv } }),
  heliumStemLimit: (a) => heliumStemLimit({ heliumClass: 'CH', stemDiameter: a as Millimetre }),
  yearlySteamCost: (a, b, c) =>
    yearlySteamCost({ flow: a as KilogramPerHour, pricePerTonne: b as Money, hours: c as HourPerYear }),
  yearlyFuelCost: (a, b, c, d, e, f) =>
    yearlyFuelCost({
      flow: a as KilogramPerHour,
      steamEnthalpy: b as KilojoulePerKilogram,
      feedEnthalpy: c as KilojoulePerKilogram,
      boilerEfficiency: d as Ratio,
      fuelPrice: e as Money,
      hours: f as HourPerYear,
    }),
  yearlyWaterCost: (a, b, c) =>
    yearlyWaterCost({ flow: a as LitrePerDay, pricePerCubicMetre: b as Money, hours: c as HourPerYear }),
  yearlyAirCost: (a, b, c) =>
    yearlyAirCost({ freeAir: a as CubicMetrePerHour, pricePerThousandCubicMetres: b as Money, hours: c as HourPerYear }),
  yearlyCarbon: (a, b) => yearlyCarbon({ energy: a as KilowattHourPerYear, factor: b as KilogramCarbonDioxidePerKilowattHour }),
}

it.each(Object.keys(engines))('%s gives finite figures or a named problem for any doubles', (name) => {
  fc.assert(
    fc.property(fc.tuple(number, number, number, number, number, number), (numbers) => {
      const outcome = engines[name]!(...numbers) as { ok: boolean; problem?: { code: string; field: string; detail: string } }
      if (outcome.ok) expect(JSON.stringify(outcome)).not.toMatch(/null/)
      else {
        expect(outcome.problem!.code).toMatch(/^(?:number|leak|steam)\/[a-z-]+$/)
        expect(outcome.problem!.field).toMatch(/^[a-z][A-Za-z]+$/)
        expect(outcome.problem!.detail.length).toBeGreaterThan(10)
      }
    }),
    { numRuns: 400 },
  )
})
