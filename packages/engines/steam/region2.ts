import type { BarAbsolute, Celsius } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { idealGasTerms, residualTerms } from './region2-coefficients.ts'
import { saturationPressure } from './saturation.ts'
import {
  type CubicMetrePerKilogram,
  cubicMetresPerKilogram,
  type KilojoulePerKilogram,
  kilojoulesPerKilogram,
} from './steam-quantity.ts'

const GAS_CONSTANT = 0.461526
const HIGHEST_CELSIUS = 800
const HIGHEST_BAR = 1000
/** Up to here the boiling line bounds the region; above it the boundary to the dense region near the critical point does. */
const END_OF_BOILING_BOUND = 350
const END_OF_DENSE_BOUND = 590
/** A pressure taken from the boiling line and back may be a rounding above it. */
const ROUNDING = 1 + 1e-9

/**
 * Room and heat of steam, dry saturated or superheated.
 *
 *     pi = p / 1 MPa, tau = 540 K / T
 *     v = R T pi gamma_pi / p       m³/kg
 *     h = R T tau gamma_tau         kJ/kg; each slope is an ideal gas part and a sum over 43 terms
 *
 * Holds from 0 to 800 °C, from any pressure above nought to the boiling pressure (to 350 °C), to the boundary of the dense
 * region (to 590 °C), or to 1,000 bar absolute. Wet steam is not known here.
 *
 * @source SRC-552 IAPWS R7-97, region 2 (docs/sources.md)
 * @returns specific volume and enthalpy, or `steam/outside-range`, or `steam/not-vapour` above the bounding pressure
 * @example vapourAt({ temperature: celsius(426.85), pressure: barAbsolute(300) }).enthalpy // → 2631.494744845
 */
export function vapourAt(input: {
  readonly temperature: Celsius
  readonly pressure: BarAbsolute
}): Outcome<{ readonly specificVolume: CubicMetrePerKilogram; readonly enthalpy: KilojoulePerKilogram }> {
  const { temperature, pressure } = input
  if (!(temperature >= 0 && temperature <= HIGHEST_CELSIUS)) {
    return refuse(
      'steam/outside-range',
      'temperature',
      `steam is known from 0 to ${HIGHEST_CELSIUS} °C, not at ${temperature} °C`,
    )
  }
  // Below this the ideal gas volume itself is no longer a number.
  if (!(pressure > 1e-9)) {
    return refuse('steam/outside-range', 'pressure', `steam needs a pressure above 0 bar absolute, not ${pressure}`)
  }
  const highest = highestPressure(temperature)
  if (!(pressure <= highest * ROUNDING)) {
    return refuse(
      'steam/not-vapour',
      'pressure',
      `at ${temperature} °C steam is known up to ${highest} bar absolute, not at ${pressure}`,
    )
  }
  const kelvin = temperature + 273.15
  const pi = pressure / 10
  const tau = 540 / kelvin
  let slopeByPressure = 1 / pi
  let slopeByTemperature = 0
  for (const [j, n] of idealGasTerms) slopeByTemperature += n * j * tau ** (j - 1)
  for (const [i, j, n] of residualTerms) {
    slopeByPressure += n * i * pi ** (i - 1) * (tau - 0.5) ** j
    slopeByTemperature += n * pi ** i * j * (tau - 0.5) ** (j - 1)
  }
  return {
    ok: true,
    // kJ/kg over 1 MPa is 0.001 m³/kg.
    specificVolume: cubicMetresPerKilogram((GAS_CONSTANT * kelvin * slopeByPressure) / 1000),
    enthalpy: kilojoulesPerKilogram(GAS_CONSTANT * kelvin * tau * slopeByTemperature),
  }
}

function highestPressure(temperature: Celsius): number {
  if (temperature > END_OF_DENSE_BOUND) return HIGHEST_BAR
  const boiling = temperature <= END_OF_BOILING_BOUND ? saturationPressure(temperature) : null
  if (boiling?.ok) return boiling.pressure
  const kelvin = temperature + 273.15
  // R7-97, Table 1: boundary between regions 2 and 3, in MPa.
  return (0.34805185628969e3 - 0.11671859879975e1 * kelvin + 0.10192970039326e-2 * kelvin ** 2) * 10
}
