import {
  type Bar,
  type KilogramPerHour,
  kilogramsPerHour,
  type LitrePerDay,
  litresPerDay,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { type KilogramPerCubicMetre, kilogramsPerCubicMetre, type LitrePerHour, litresPerHour } from './leak-quantity.ts'
import { areaOfOpening, type Opening } from './opening.ts'

const PASCAL_PER_BAR = 1e5
const SECONDS_PER_HOUR = 3600

/**
 * Water through an opening.
 *
 *     flow = coefficient area sqrt(2 pressure drop / density)       m³/s, m², Pa, kg/m³
 *
 * Holds for cold water in turbulent flow. A long thin path through packing passes less, and so does hot water that flashes.
 *
 * @source SRC-508 orifice formula, coefficient 0.61 of a sharp edge, 998.2 kg/m³ at 20 °C (docs/sources.md)
 * @returns litres an hour and a day, kg/h; or `number/not-positive`
 * @example waterThroughOpening({ opening: { diameter: mm(1) }, pressureDrop: bar(10) }).perHour // → 77.201978823
 */
export function waterThroughOpening(input: {
  readonly opening: Opening
  /** Before less behind; to the open air, what the gauge shows. */
  readonly pressureDrop: Bar
  readonly coefficient?: Ratio
  readonly density?: KilogramPerCubicMetre
}): Outcome<{ readonly perHour: LitrePerHour; readonly perDay: LitrePerDay; readonly mass: KilogramPerHour }> {
  const { opening, pressureDrop, coefficient = ratio(0.61), density = kilogramsPerCubicMetre(998.2) } = input
  const area = areaOfOpening(opening)
  if (!area.ok) return area
  const refused = firstNotPositive({ pressureDrop, coefficient, density })
  if (refused) return refused
  const metresPerSecond = Math.sqrt((2 * pressureDrop * PASCAL_PER_BAR) / density)
  // mm² times m/s is a thousandth of a litre a second.
  const perHour = (coefficient * area.area * metresPerSecond * SECONDS_PER_HOUR) / 1000
  const mass = (perHour * density) / 1000
  if (!Number.isFinite(perHour * 24) || !Number.isFinite(mass)) {
    return refuse('number/out-of-range', 'pressureDrop', 'the figures are too large to compute with')
  }
  return { ok: true, perHour: litresPerHour(perHour), perDay: litresPerDay(perHour * 24), mass: kilogramsPerHour(mass) }
}
