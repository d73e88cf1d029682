import {
  type Millimetre,
  type Newton,
  type NewtonMetre,
  newtons,
  type Quantity,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome } from '../outcome.ts'
import { firstNegative, firstOutOfRange } from './in-range.ts'

/** What one person should have to pull at the rim of a wheel; the plant edits it. @source SRC-418 (docs/sources.md) */
export const usualRimPullLimit: Newton = newtons(360)

/** Share of a drive's thrust or torque that packing may take; the plant edits it. @source SRC-419 (docs/sources.md) */
export const usualPackingShareLimit: Ratio = ratio(0.3)

const MILLIMETRES_PER_METRE = 1000

/**
 * Pull at the rim of a handwheel.
 *
 *     rim pull  = torque / (wheel diameter / 2)      N, one hand; N·m · 1000, mm
 *     each hand = rim pull / 2                       N, two hands as a couple
 *
 * @source SRC-420 lever · SRC-418 limit (docs/sources.md)
 * @returns both pulls and whether the rim pull is beyond the limit; or a named problem
 * @example rimPull({ torque: newtonMetres(30), wheelDiameter: mm(200), rimPullLimit: newtons(360) }) // → { ok: true, rimPull: 300, pullOfEachHand: 150, beyondLimit: false }
 */
export function rimPull(input: {
  readonly torque: NewtonMetre
  readonly wheelDiameter: Millimetre
  readonly rimPullLimit: Newton
}): Outcome<{ readonly rimPull: Newton; readonly pullOfEachHand: Newton; readonly beyondLimit: boolean }> {
  const { torque, wheelDiameter, rimPullLimit } = input
  const wrong = firstNegative({ torque }) ?? firstNotPositive({ wheelDiameter, rimPullLimit })
  if (wrong) return wrong
  const pull = (torque * MILLIMETRES_PER_METRE) / (wheelDiameter / 2)
  const tooLarge = firstOutOfRange('torque', pull)
  if (tooLarge) return tooLarge
  return { ok: true, rimPull: newtons(pull), pullOfEachHand: newtons(pull / 2), beyondLimit: pull > rimPullLimit }
}

/**
 * Share of what a drive has that the packing takes: thrust of thrust, or torque of torque.
 *
 *     share = packing effort / available effort
 *
 * Beyond 1 the stem does not move by packing alone; beyond the limit little is left for seat and pressure.
 *
 * @source SRC-419 limit (docs/sources.md)
 * @returns the share and how it stands, or a named problem
 * @example packingShare({ packingEffort: newtons(2000), availableEffort: newtons(8000), shareLimit: ratio(0.3) }) // → { ok: true, share: 0.25, standing: 'within limit' }
 */
export function packingShare<Unit extends 'N' | 'N·m'>(input: {
  readonly packingEffort: Quantity<Unit>
  readonly availableEffort: Quantity<NoInfer<Unit>>
  readonly shareLimit: Ratio
}): Outcome<{ readonly share: Ratio; readonly standing: 'within limit' | 'above limit' | 'more than there is' }> {
  const { packingEffort, availableEffort, shareLimit } = input
  const wrong = firstNegative({ packingEffort }) ?? firstNotPositive({ availableEffort, shareLimit })
  if (wrong) return wrong
  const share = packingEffort / availableEffort
  const tooLarge = firstOutOfRange('packingEffort', share)
  if (tooLarge) return tooLarge
  const standing = share > 1 ? 'more than there is' : share > shareLimit ? 'above limit' : 'within limit'
  return { ok: true, share: ratio(share), standing }
}
