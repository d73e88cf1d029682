import { fahrenheitToCelsius } from '@glandkeeper/units/convert'
import {
  type BarAbsolute,
  barAbsolute,
  type Celsius,
  celsius,
  type KilogramPerHour,
  kilogramsPerHour,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { type CubicFootPerMinute, cubicFeetPerMinute, type CubicMetrePerHour, cubicMetresPerHour } from './leak-quantity.ts'
import { areaOfOpening, type Opening } from './opening.ts'

/** Dry air: J/(kg K), and the ratio of its two specific heats. */
const GAS_CONSTANT = 287.05
const GAMMA = 1.4
/** Downstream over upstream, absolute, below which air passes no faster: (2 / 2.4)^3.5. */
const CRITICAL_RATIO = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1))
const CHOKED = Math.sqrt(GAMMA) * (2 / (GAMMA + 1)) ** ((GAMMA + 1) / (2 * (GAMMA - 1)))
const CUBIC_METRES_PER_CUBIC_FOOT = 0.3048 ** 3
const ABSOLUTE_ZERO = -273.15
const PASCAL_PER_BAR = 1e5
/** Free air is counted at 60 °F and the standard atmosphere. */
const FREE_TEMPERATURE = celsius(fahrenheitToCelsius(60))
const ATMOSPHERE = barAbsolute(1.01325)

/**
 * Coefficients by the edge of the opening, to take or to change.
 *
 * @source SRC-510 chart of air through an opening (docs/sources.md)
 */
export const airCoefficients = {
  'well rounded': ratio(0.97),
  'sharp edged': ratio(0.65),
  'as the chart prints': ratio(1),
} as const

/**
 * Compressed air through an opening to the open, choked.
 *
 *     mass flow = coefficient area pressure sqrt(gamma / (R T)) (2 / (gamma + 1))^((gamma + 1) / (2 gamma - 2))
 *     free air = mass flow R T free / atmosphere        gamma 1.4, R 287.05 J/(kg K)
 *
 * Holds while the pressure behind is below 0.528 of the pressure before, both absolute, for dry air.
 * Free air is at 60 °F (15.6 °C) and 1.01325 bar absolute.
 *
 * @source SRC-509 choked flow of a perfect gas · SRC-510 coefficients (docs/sources.md)
 * @returns kg/h and free air; or `leak/not-critical`, `number/not-positive`, `number/out-of-range`
 * @example airThroughOpening({ opening: { diameter: mm(1) }, pressure: barAbsolute(8), coefficient: ratio(1) }).ok // → true
 */
export function airThroughOpening(input: {
  readonly opening: Opening
  readonly pressure: BarAbsolute
  readonly coefficient: Ratio
  /** Of the air before the opening; 60 °F when not given. */
  readonly temperature?: Celsius
  /** The atmosphere when not given. */
  readonly downstreamPressure?: BarAbsolute
}): Outcome<{
  readonly mass: KilogramPerHour
  readonly freeAir: CubicMetrePerHour
  readonly freeAirCubicFeet: CubicFootPerMinute
}> {
  const { opening, pressure, coefficient, temperature = FREE_TEMPERATURE, downstreamPressure = ATMOSPHERE } = input
  const area = areaOfOpening(opening)
  if (!area.ok) return area
  const refused = firstNotPositive({ pressure, coefficient }) ?? notChoked(pressure, downstreamPressure)
  if (refused) return refused
  if (!(temperature > ABSOLUTE_ZERO && temperature < Infinity)) {
    return refuse('number/out-of-range', 'temperature', `air must be above absolute zero, not at ${temperature} °C`)
  }
  const root = Math.sqrt(GAS_CONSTANT * (temperature - ABSOLUTE_ZERO))
  const kilogramsPerSecond = (coefficient * area.area * 1e-6 * pressure * PASCAL_PER_BAR * CHOKED) / root
  const mass = kilogramsPerSecond * 3600
  const freeAir = (mass * GAS_CONSTANT * (FREE_TEMPERATURE - ABSOLUTE_ZERO)) / (ATMOSPHERE * PASCAL_PER_BAR)
  if (!Number.isFinite(mass) || !Number.isFinite(freeAir)) {
    return refuse('number/out-of-range', 'pressure', 'the figures are too large to compute with')
  }
  return {
    ok: true,
    mass: kilogramsPerHour(mass),
    freeAir: cubicMetresPerHour(freeAir),
    freeAirCubicFeet: cubicFeetPerMinute(freeAir / CUBIC_METRES_PER_CUBIC_FOOT / 60),
  }
}

function notChoked(pressure: BarAbsolute, downstreamPressure: BarAbsolute) {
  if (!(downstreamPressure >= 0 && downstreamPressure < Infinity)) {
    return refuse('number/negative', 'downstreamPressure', `an absolute pressure is 0 or more, not ${downstreamPressure}`)
  }
  if (downstreamPressure / pressure < CRITICAL_RATIO) return null
  const least = (downstreamPressure / CRITICAL_RATIO).toFixed(3)
  return refuse(
    'leak/not-critical',
    'pressure',
    `against ${downstreamPressure} bar absolute this holds above ${least} bar absolute, not at ${pressure}`,
  )
}
