import { type Megapascal, type Millimetre, type Newton, newtons, type Ratio } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome } from '../outcome.ts'
import { firstNegative, firstOutOfRange } from './in-range.ts'
import { decayRate, type PackingWalls } from './stress-profile.ts'

/**
 * Friction of the packing on its stem, with the stress under the follower taken for the whole set.
 *
 *     friction = π · stem · set height · packing stress · μ · lateral ratio      N; mm, mm, MPa
 *
 * An upper figure: the stress falls down the set. Breaking away after rest takes more than running.
 *
 * @source SRC-414 (docs/sources.md)
 * @returns N, or a named problem
 * @example stemFriction({ stemDiameter: mm(20), setHeight: mm(30), packingStress: megapascals(20), friction: ratio(0.1), lateralRatio: ratio(0.5) }).friction // → 1884.9555921538758
 */
export function stemFriction(input: {
  readonly stemDiameter: Millimetre
  readonly setHeight: Millimetre
  readonly packingStress: Megapascal
  readonly friction: Ratio
  readonly lateralRatio: Ratio
}): Outcome<{ readonly friction: Newton }> {
  const { stemDiameter, setHeight, packingStress, friction, lateralRatio } = input
  const wrong = firstNotPositive({ stemDiameter, setHeight }) ?? firstNegative({ packingStress, friction, lateralRatio })
  if (wrong) return wrong
  const force = Math.PI * stemDiameter * setHeight * packingStress * friction * lateralRatio
  return firstOutOfRange('packingStress', force) ?? { ok: true, friction: newtons(force) }
}

/**
 * Friction of the packing on its stem, with the stress falling down the set.
 *
 *     friction = π · stem · μ · lateral ratio · packing stress · (1 - exp(-decay · set height)) / decay      N
 *
 * Never more than with constant stress, and the same where there is no decay. Limits as for the stress profile.
 *
 * @source SRC-415 integral of the exponential fall (docs/sources.md)
 * @returns N, or a named problem
 * @example stemFrictionWithDecay({ boxBore: mm(35), stemDiameter: mm(22), boreFriction: ratio(0), boreLateralRatio: ratio(0), stemFriction: ratio(0), stemLateralRatio: ratio(0), packingStress: megapascals(20), setHeight: mm(30) }) // → { ok: true, friction: 0 }
 */
export function stemFrictionWithDecay(
  input: PackingWalls & { readonly packingStress: Megapascal; readonly setHeight: Millimetre },
): Outcome<{ readonly friction: Newton }> {
  const decay = decayRate(input)
  if (!decay.ok) return decay
  const constant = stemFriction({ ...input, friction: input.stemFriction, lateralRatio: input.stemLateralRatio })
  if (!constant.ok) return constant
  const fall = decay.decayRate * input.setHeight
  // 1 - exp(-x) loses all figures at small x; expm1 keeps them. Nought over nought is the limit 1.
  const share = fall === 0 ? 1 : -Math.expm1(-fall) / fall
  const tooLarge = firstOutOfRange('setHeight', fall)
  return tooLarge ?? { ok: true, friction: newtons(constant.friction * share) }
}
