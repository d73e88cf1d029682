import { type BarAbsolute, barAbsolute, type Celsius, celsius } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'

/** R7-97, Table 34: n1 to n10, pressure in MPa and temperature in K. */
const n1 = 0.11670521452767e4
const n2 = -0.72421316703206e6
const n3 = -0.17073846940092e2
const n4 = 0.1202082470247e5
const n5 = -0.32325550322333e7
const n6 = 0.1491510861353e2
const n7 = -0.48232657361591e4
const n8 = 0.40511340542057e6
const n9 = -0.23855557567849
const n10 = 0.65017534844798e3

const KELVIN_AT_ZERO_CELSIUS = 273.15
const BAR_PER_MEGAPASCAL = 10
/** 647.096 K, the critical point. */
const CRITICAL_CELSIUS = 373.946
const CRITICAL_BAR = 220.64
/** What the equation itself gives at 0 °C, so that either direction takes what the other gives. */
const LEAST_BAR = 0.0061121267744

/**
 * Pressure at which water boils at this temperature.
 *
 *     theta = T + n9 / (T - n10)                          T in K
 *     p = (2 C / (-B + sqrt(B² - 4 A C)))⁴                MPa; A, B, C are quadratics in theta
 *
 * Holds from 0 °C to the critical point, 373.946 °C, for pure water over a flat surface.
 *
 * @source SRC-550 IAPWS R7-97, region 4 (docs/sources.md)
 * @returns bar absolute, or `steam/outside-range`
 * @example saturationPressure(celsius(373.946)) // → { ok: true, pressure: 220.64 }
 */
export function saturationPressure(temperature: Celsius): Outcome<{ readonly pressure: BarAbsolute }> {
  if (!(temperature >= 0 && temperature <= CRITICAL_CELSIUS)) {
    return refuse(
      'steam/outside-range',
      'temperature',
      `water boils between 0 and ${CRITICAL_CELSIUS} °C, not at ${temperature} °C`,
    )
  }
  const kelvin = temperature + KELVIN_AT_ZERO_CELSIUS
  const theta = kelvin + n9 / (kelvin - n10)
  const a = theta * theta + n1 * theta + n2
  const b = n3 * theta * theta + n4 * theta + n5
  const c = n6 * theta * theta + n7 * theta + n8
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))
  // At the critical point the rounding of the coefficients must not leave the range.
  return { ok: true, pressure: barAbsolute(Math.min(root ** 4 * BAR_PER_MEGAPASCAL, CRITICAL_BAR)) }
}

/**
 * Temperature at which water boils at this pressure: the same equation solved the other way, so nothing is lost between them.
 *
 *     beta = p^(1/4)                                      p in MPa
 *     T = (n10 + D - sqrt((n10 + D)² - 4 (n9 + n10 D))) / 2     K; D from quadratics in beta
 *
 * Holds from 0.00611 to 220.64 bar absolute. At 1.01325 bar it gives 99.974 °C, not 100.
 *
 * @source SRC-550 IAPWS R7-97, region 4 (docs/sources.md)
 * @returns °C, or `steam/outside-range`
 * @example saturationTemperature(barAbsolute(10)) // → { ok: true, temperature: 179.885632391 }
 */
export function saturationTemperature(pressure: BarAbsolute): Outcome<{ readonly temperature: Celsius }> {
  if (!(pressure >= LEAST_BAR && pressure <= CRITICAL_BAR)) {
    return refuse(
      'steam/outside-range',
      'pressure',
      `water boils between 0.00611 and ${CRITICAL_BAR} bar absolute, not at ${pressure} bar absolute`,
    )
  }
  const beta = (pressure / BAR_PER_MEGAPASCAL) ** 0.25
  const e = beta * beta + n3 * beta + n6
  const f = n1 * beta * beta + n4 * beta + n7
  const g = n2 * beta * beta + n5 * beta + n8
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g))
  const kelvin = (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2
  const found = kelvin - KELVIN_AT_ZERO_CELSIUS
  // At the very ends a rounding must not leave the range.
  return { ok: true, temperature: celsius(Math.min(Math.max(found, 0), CRITICAL_CELSIUS)) }
}
