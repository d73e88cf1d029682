import type { KilogramPerHour, LitrePerDay, Ratio } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import type { KilojoulePerKilogram } from '../steam/steam-quantity.ts'
import {
  type CubicMetrePerHour,
  type CubicMetrePerYear,
  cubicMetresPerYear,
  type HourPerYear,
  hoursPerYear,
  type KilogramCarbonDioxidePerKilowattHour,
  type KilogramCarbonDioxidePerYear,
  kilogramsCarbonDioxidePerYear,
  type KilowattHourPerYear,
  kilowattHoursPerYear,
  type Money,
  money,
  type TonnePerYear,
  tonnesPerYear,
} from './leak-quantity.ts'

/** A leak that nobody mends runs day and night. */
const ALL_YEAR = hoursPerYear(8760)
/** Of a leap year; more hours than that no year has. */
const MOST_HOURS = 8784
const KILOJOULES_PER_KILOWATT_HOUR = 3600

/**
 * Steam lost in a year, at a price for the tonne.
 *
 *     tonnes = flow * hours / 1,000;  cost = tonnes * price
 *
 * Holds while the leak stays as it is: most grow.
 *
 * @source SRC-518 worked example of a public tip sheet (docs/sources.md)
 * @returns tonnes and money a year; or `number/negative`, `number/out-of-range`
 * @example yearlySteamCost({ flow: kilogramsPerHour(10), pricePerTonne: 30 }) // → { ok: true, steam: 87.6, cost: 2628 }
 */
export function yearlySteamCost(input: {
  readonly flow: KilogramPerHour
  readonly pricePerTonne: Money
  readonly hours?: HourPerYear
}): Outcome<{ readonly steam: TonnePerYear; readonly cost: Money }> {
  const { flow, pricePerTonne, hours = ALL_YEAR } = input
  const refused = firstNegative({ flow, pricePerTonne }) ?? noSuchHours(hours)
  if (refused) return refused
  const steam = (flow * hours) / 1000
  const cost = steam * pricePerTonne
  return firstTooLarge({ flow: steam, pricePerTonne: cost }) ?? { ok: true, steam: tonnesPerYear(steam), cost: money(cost) }
}

/**
 * Steam lost in a year, as the fuel it took to raise it.
 *
 *     heat = flow * hours * (enthalpy of steam - enthalpy of feed water) / 3,600      kWh
 *     fuel = heat / boiler efficiency;  cost = fuel * price
 *
 * Efficiency and price must be on the same heating value. Feed water, treatment and the way through the mains are not counted.
 *
 * @source SRC-519 heat balance of a boiler (docs/sources.md)
 * @returns kWh of heat and fuel, and money a year; or `leak/no-heat`, `leak/efficiency`, `number/…`
 * @example yearlyFuelCost({ flow: 1, steamEnthalpy: 2780, feedEnthalpy: 80, boilerEfficiency: 1, fuelPrice: 1 }).fuel // → 6570
 */
export function yearlyFuelCost(input: {
  readonly flow: KilogramPerHour
  readonly steamEnthalpy: KilojoulePerKilogram
  readonly feedEnthalpy: KilojoulePerKilogram
  readonly boilerEfficiency: Ratio
  /** For one kWh of fuel. */
  readonly fuelPrice: Money
  readonly hours?: HourPerYear
}): Outcome<{ readonly heat: KilowattHourPerYear; readonly fuel: KilowattHourPerYear; readonly cost: Money }> {
  const { flow, steamEnthalpy, feedEnthalpy, boilerEfficiency, fuelPrice, hours = ALL_YEAR } = input
  const refused = firstNegative({ flow, feedEnthalpy, fuelPrice }) ?? noSuchHours(hours)
  if (refused) return refused
  if (!(steamEnthalpy > feedEnthalpy && steamEnthalpy < Infinity)) {
    return refuse(
      'leak/no-heat',
      'steamEnthalpy',
      `steam must carry more heat than its feed water: ${steamEnthalpy} against ${feedEnthalpy} kJ/kg`,
    )
  }
  if (!(boilerEfficiency > 0 && boilerEfficiency <= 1.1)) {
    return refuse(
      'leak/efficiency',
      'boilerEfficiency',
      `a boiler efficiency is above 0 and at most 1.1, not ${boilerEfficiency}`,
    )
  }
  const heat = (flow * hours * (steamEnthalpy - feedEnthalpy)) / KILOJOULES_PER_KILOWATT_HOUR
  const fuel = heat / boilerEfficiency
  const cost = fuel * fuelPrice
  return (
    firstTooLarge({ flow: heat, boilerEfficiency: fuel, fuelPrice: cost }) ?? {
      ok: true,
      heat: kilowattHoursPerYear(heat),
      fuel: kilowattHoursPerYear(fuel),
      cost: money(cost),
    }
  )
}

/**
 * Water lost in a year, at a price for the cubic metre.
 *
 *     m³ = litres a day * hours / 24 / 1,000;  cost = m³ * price
 *
 * What it costs to treat and to drain belongs in the price.
 *
 * @source SRC-520 volume times price (docs/sources.md)
 * @returns m³ and money a year; or `number/negative`, `number/out-of-range`
 * @example yearlyWaterCost({ flow: litresPerDay(1000), pricePerCubicMetre: 2 }) // → { ok: true, water: 365, cost: 730 }
 */
export function yearlyWaterCost(input: {
  readonly flow: LitrePerDay
  readonly pricePerCubicMetre: Money
  readonly hours?: HourPerYear
}): Outcome<{ readonly water: CubicMetrePerYear; readonly cost: Money }> {
  const { flow, pricePerCubicMetre, hours = ALL_YEAR } = input
  const refused = firstNegative({ flow, pricePerCubicMetre }) ?? noSuchHours(hours)
  if (refused) return refused
  const water = (flow * hours) / 24 / 1000
  const cost = water * pricePerCubicMetre
  return (
    firstTooLarge({ flow: water, pricePerCubicMetre: cost }) ?? { ok: true, water: cubicMetresPerYear(water), cost: money(cost) }
  )
}

/**
 * Compressed air lost in a year, at a price for a thousand cubic metres of free air.
 *
 *     m³ = free air * hours;  cost = m³ * price / 1,000
 *
 * @source SRC-520 volume times price (docs/sources.md)
 * @returns m³ of free air and money a year; or `number/negative`, `number/out-of-range`
 * @example yearlyAirCost({ freeAir: 10, pricePerThousandCubicMetres: 20 }) // → { ok: true, air: 87600, cost: 1752 }
 */
export function yearlyAirCost(input: {
  readonly freeAir: CubicMetrePerHour
  readonly pricePerThousandCubicMetres: Money
  readonly hours?: HourPerYear
}): Outcome<{ readonly air: CubicMetrePerYear; readonly cost: Money }> {
  const { freeAir, pricePerThousandCubicMetres, hours = ALL_YEAR } = input
  const refused = firstNegative({ freeAir, pricePerThousandCubicMetres }) ?? noSuchHours(hours)
  if (refused) return refused
  const air = freeAir * hours
  const cost = (air / 1000) * pricePerThousandCubicMetres
  return (
    firstTooLarge({ freeAir: air, pricePerThousandCubicMetres: cost }) ?? {
      ok: true,
      air: cubicMetresPerYear(air),
      cost: money(cost),
    }
  )
}

/**
 * Carbon of the fuel or current a leak took, by the plant's own factor: it differs by fuel, grid and year, none is built in.
 *
 *     kg CO2e = kWh * factor
 *
 * @source SRC-521 energy times emission factor (docs/sources.md)
 * @returns kg CO2e a year; or `number/negative`, `number/out-of-range`
 * @example yearlyCarbon({ energy: 1000, factor: 0.2 }) // → { ok: true, carbon: 200 }
 */
export function yearlyCarbon(input: {
  readonly energy: KilowattHourPerYear
  readonly factor: KilogramCarbonDioxidePerKilowattHour
}): Outcome<{ readonly carbon: KilogramCarbonDioxidePerYear }> {
  const { energy, factor } = input
  const refused = firstNegative({ energy, factor })
  if (refused) return refused
  const carbon = energy * factor
  return firstTooLarge({ energy: carbon }) ?? { ok: true, carbon: kilogramsCarbonDioxidePerYear(carbon) }
}

function firstNegative(inputs: Readonly<Record<string, number>>) {
  for (const [field, value] of Object.entries(inputs)) {
    if (!(value >= 0 && value < Infinity)) return refuse('number/negative', field, `must be a number of 0 or more, not ${value}`)
  }
  return null
}

/** Each product under the name of the input that made it too large. */
function firstTooLarge(products: Readonly<Record<string, number>>) {
  for (const [field, value] of Object.entries(products)) {
    if (!Number.isFinite(value)) return refuse('number/out-of-range', field, 'the figures are too large to compute with')
  }
  return null
}

function noSuchHours(hours: HourPerYear) {
  const refused = firstNotPositive({ hours })
  if (refused) return refused
  return hours <= MOST_HOURS ? null : refuse('leak/hours', 'hours', `a year has at most ${MOST_HOURS} hours, not ${hours}`)
}
