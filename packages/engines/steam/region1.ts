import type { BarAbsolute, Celsius } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { liquidTerms } from './region1-coefficients.ts'
import { saturationPressure } from './saturation.ts'
import {
  type CubicMetrePerKilogram,
  cubicMetresPerKilogram,
  type KilojoulePerKilogram,
  kilojoulesPerKilogram,
} from './steam-quantity.ts'

const GAS_CONSTANT = 0.461526
const HIGHEST_CELSIUS = 350
const HIGHEST_BAR = 1000
/** A pressure taken from the boiling line and back may be a rounding below it. */
const LOWEST_SHARE_OF_BOILING = 1 - 1e-9

/**
 * Room and heat of liquid water, boiling or colder.
 *
 *     pi = p / 16.53 MPa, tau = 1386 K / T
 *     v = R T pi gamma_pi / p       m³/kg
 *     h = R T tau gamma_tau         kJ/kg; gamma_pi and gamma_tau are sums over 34 terms
 *
 * Holds from 0 to 350 °C and from the boiling pressure to 1,000 bar absolute. Knows nothing of what is dissolved in the water.
 *
 * @source SRC-551 IAPWS R7-97, region 1 (docs/sources.md)
 * @returns specific volume and enthalpy, or `steam/outside-range`, or `steam/not-liquid` below the boiling pressure
 * @example liquidAt({ temperature: celsius(26.85), pressure: barAbsolute(30) }).enthalpy // → 115.331273021
 */
export function liquidAt(input: {
  readonly temperature: Celsius
  readonly pressure: BarAbsolute
}): Outcome<{ readonly specificVolume: CubicMetrePerKilogram; readonly enthalpy: KilojoulePerKilogram }> {
  const { temperature, pressure } = input
  if (!(temperature >= 0 && temperature <= HIGHEST_CELSIUS)) {
    return refuse(
      'steam/outside-range',
      'temperature',
      `liquid is known from 0 to ${HIGHEST_CELSIUS} °C, not at ${temperature} °C`,
    )
  }
  if (!(pressure <= HIGHEST_BAR)) {
    return refuse('steam/outside-range', 'pressure', `liquid is known up to ${HIGHEST_BAR} bar absolute, not at ${pressure}`)
  }
  const boiling = saturationPressure(temperature)
  if (!boiling.ok) return boiling
  if (!(pressure >= boiling.pressure * LOWEST_SHARE_OF_BOILING)) {
    return refuse(
      'steam/not-liquid',
      'pressure',
      `at ${temperature} °C water is liquid from ${boiling.pressure} bar absolute, not ${pressure}`,
    )
  }
  const kelvin = temperature + 273.15
  const pi = pressure / 165.3
  const tau = 1386 / kelvin
  let slopeByPressure = 0
  let slopeByTemperature = 0
  for (const [i, j, n] of liquidTerms) {
    slopeByPressure -= n * i * (7.1 - pi) ** (i - 1) * (tau - 1.222) ** j
    slopeByTemperature += n * (7.1 - pi) ** i * j * (tau - 1.222) ** (j - 1)
  }
  return {
    ok: true,
    // kJ/kg over MPa is 0.001 m³/kg; pi over p is 1 over 16.53 MPa.
    specificVolume: cubicMetresPerKilogram((GAS_CONSTANT * kelvin * slopeByPressure) / 16.53 / 1000),
    enthalpy: kilojoulesPerKilogram(GAS_CONSTANT * kelvin * tau * slopeByTemperature),
  }
}
