import type { BarAbsolute, Celsius } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { liquidAt } from './region1.ts'
import { vapourAt } from './region2.ts'
import { saturationTemperature } from './saturation.ts'
import { type CubicMetrePerKilogram, type KilojoulePerKilogram, kilojoulesPerKilogram } from './steam-quantity.ts'

/** Boiling pressure at 350 °C: above it the steam touches a region that is not computed here. */
const HIGHEST_BAR = 165.291642526

/**
 * One row of the steam table: boiling water and dry saturated steam at a pressure.
 *
 *     heat to evaporate = heat of steam - heat of water     kJ/kg
 *
 * Holds from 0.00611 to 165.29 bar absolute (0 to 350 °C), for dry saturated steam: wet or superheated steam carries other heat.
 *
 * @source SRC-553 saturated steam from regions 1, 2 and 4 of IAPWS R7-97 (docs/sources.md)
 * @returns temperature, enthalpies in kJ/kg, specific volumes in m³/kg, or `steam/outside-range`
 * @example saturatedSteam(barAbsolute(10)).heatOfEvaporation // → 2014.436693349
 */
export function saturatedSteam(pressure: BarAbsolute): Outcome<{
  readonly temperature: Celsius
  readonly enthalpyOfWater: KilojoulePerKilogram
  readonly heatOfEvaporation: KilojoulePerKilogram
  readonly enthalpyOfSteam: KilojoulePerKilogram
  readonly volumeOfWater: CubicMetrePerKilogram
  readonly volumeOfSteam: CubicMetrePerKilogram
}> {
  if (!(pressure <= HIGHEST_BAR)) {
    return refuse('steam/outside-range', 'pressure', `the steam table ends at ${HIGHEST_BAR} bar absolute, before ${pressure}`)
  }
  const boiling = saturationTemperature(pressure)
  if (!boiling.ok) return boiling
  const state = { temperature: boiling.temperature, pressure }
  const water = liquidAt(state)
  if (!water.ok) return water
  const steam = vapourAt(state)
  if (!steam.ok) return steam
  return {
    ok: true,
    temperature: boiling.temperature,
    enthalpyOfWater: water.enthalpy,
    heatOfEvaporation: kilojoulesPerKilogram(steam.enthalpy - water.enthalpy),
    enthalpyOfSteam: steam.enthalpy,
    volumeOfWater: water.specificVolume,
    volumeOfSteam: steam.specificVolume,
  }
}
