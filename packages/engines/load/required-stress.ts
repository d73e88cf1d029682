import { type Bar, type Megapascal, megapascals, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { firstNegative, firstOutOfRange } from './in-range.ts'

/** What a plant asks of its packings; the plant edits both. */
export interface StressRule {
  readonly pressureFactor: Ratio
  readonly leastStress: Megapascal
}

/**
 * Where a plant has no rule of its own: 1.5 times the pressure, and not below 3,800 psi die-formed or 5,500 psi braided.
 *
 * @source SRC-401 (docs/sources.md)
 */
export const usualStressRules: Readonly<Record<'die-formed' | 'braided', StressRule>> = {
  'die-formed': { pressureFactor: ratio(1.5), leastStress: megapascals(26.2) },
  braided: { pressureFactor: ratio(1.5), leastStress: megapascals(37.92) },
}

const MEGAPASCALS_PER_BAR = 0.1
const VACUUM_BAR = -1.01325

/**
 * Stress the gland must put on the packing.
 *
 *     required = max(factor · pressure, least)      MPa; pressure in bar above atmosphere, 0.1 MPa each
 *
 * A rule of the trade: it knows nothing of temperature, of the fluid or of one make of packing.
 *
 * @source SRC-401 common rule (docs/sources.md)
 * @returns the stress and which of the two set it, or a named problem
 * @example requiredStress({ systemPressure: bar(100), ...usualStressRules['die-formed'] }) // → { ok: true, requiredStress: 26.2, setBy: 'least stress' }
 */
export function requiredStress(
  input: { readonly systemPressure: Bar } & StressRule,
): Outcome<{ readonly requiredStress: Megapascal; readonly setBy: 'pressure' | 'least stress' }> {
  const { systemPressure, pressureFactor, leastStress } = input
  const wrong = firstNotPositive({ pressureFactor }) ?? firstNegative({ leastStress })
  if (wrong) return wrong
  if (!(systemPressure >= VACUUM_BAR))
    return refuse('pressure/below-vacuum', 'systemPressure', `${systemPressure} bar above atmosphere is below vacuum`)
  const byPressure = pressureFactor * systemPressure * MEGAPASCALS_PER_BAR
  const tooLarge = firstOutOfRange('systemPressure', byPressure)
  if (tooLarge) return tooLarge
  return byPressure > leastStress
    ? { ok: true, requiredStress: megapascals(byPressure), setBy: 'pressure' }
    : { ok: true, requiredStress: leastStress, setBy: 'least stress' }
}
