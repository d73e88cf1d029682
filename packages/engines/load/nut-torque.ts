import {
  type Megapascal,
  type Millimetre,
  type Newton,
  type NewtonMetre,
  newtonMetres,
  newtons,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { type BoxAndStem, stressFromLoad } from './gland-load.ts'
import { firstNegative, firstOutOfRange, notACount } from './in-range.ts'

/** The nut factor is an average and differs from maker to maker: always taken with its spread. */
export interface NutFactorRange {
  readonly low: Ratio
  readonly usual: Ratio
  readonly high: Ratio
}

/**
 * Where nothing better is known; the plant edits them. Unknown spans the others, with the one value that was read, 0.2.
 *
 * @source SRC-405 ranges from memory (docs/sources.md)
 */
export const usualNutFactors: Readonly<Record<'dry' | 'oiled' | 'paste' | 'unknown', NutFactorRange>> = {
  dry: { low: ratio(0.2), usual: ratio(0.25), high: ratio(0.3) },
  oiled: { low: ratio(0.15), usual: ratio(0.165), high: ratio(0.18) },
  paste: { low: ratio(0.11), usual: ratio(0.135), high: ratio(0.16) },
  unknown: { low: ratio(0.11), usual: ratio(0.2), high: ratio(0.3) },
}

/** Shares of the full torque to take in turn, all nuts at each; the plant edits them. @source SRC-406 (docs/sources.md) */
export const usualTorqueShares: readonly Ratio[] = [ratio(0.3), ratio(0.6), ratio(1)]

const MILLIMETRES_PER_METRE = 1000

/**
 * Torque on each nut for a load of the gland.
 *
 *     torque = nut factor · load / studs · stud diameter      N·m; N, mm / 1000
 *
 * Holds for equal nuts taken up equally; the nut factor carries all that is unknown of friction.
 *
 * @source SRC-404 torque from load (docs/sources.md)
 * @returns torque of each nut, or a named problem
 * @example nutTorque({ glandLoad: newtons(11640), studCount: 2, studDiameter: mm(10), nutFactor: ratio(0.2) }) // → { ok: true, torque: 11.64 }
 */
export function nutTorque(input: {
  readonly glandLoad: Newton
  readonly studCount: number
  readonly studDiameter: Millimetre
  readonly nutFactor: Ratio
}): Outcome<{ readonly torque: NewtonMetre }> {
  const { glandLoad, studCount, studDiameter, nutFactor } = input
  const wrong = firstNegative({ glandLoad }) ?? notACount('studCount', studCount) ?? firstNotPositive({ studDiameter, nutFactor })
  if (wrong) return wrong
  const torque = (((nutFactor * glandLoad) / studCount) * studDiameter) / MILLIMETRES_PER_METRE
  return firstOutOfRange('glandLoad', torque) ?? { ok: true, torque: newtonMetres(torque) }
}

/**
 * The torque in steps: every nut to the first, then every nut to the next.
 *
 * @source SRC-406 steps, common practice (docs/sources.md)
 * @returns one torque for each share; refused when the shares do not rise to the whole
 * @example torqueSteps(newtonMetres(20), usualTorqueShares).steps.map((step) => step.torque) // → [6, 12, 20]
 */
export function torqueSteps(
  torque: NewtonMetre,
  shares: readonly Ratio[],
): Outcome<{ readonly steps: readonly { readonly share: Ratio; readonly torque: NewtonMetre }[] }> {
  const wrong = firstNegative({ torque })
  if (wrong) return wrong
  const rising = shares.every((share, index) => share > (shares[index - 1] ?? 0))
  if (!rising || shares.at(-1) !== 1)
    return refuse('torque/steps-not-rising', 'shares', `the shares ${shares.join(', ')} must rise from above 0 to 1`)
  return { ok: true, steps: shares.map((share) => ({ share, torque: newtonMetres(share * torque) })) }
}

/**
 * Stress in the packing from a torque measured at each nut, with the span the nut factor leaves open.
 *
 *     each   = torque / (nut factor · stud diameter)      N; N·m · 1000, mm
 *     stress = each · studs / area                        MPa; the lowest from the highest nut factor
 *
 * @source SRC-404 torque from load, the other way round (docs/sources.md)
 * @returns the usual stress between the lowest and the highest, or a named problem
 * @example stressFromTorque({ boxBore: mm(35), stemDiameter: mm(22), torque: newtonMetres(0), studCount: 2, studDiameter: mm(10), nutFactor: usualNutFactors.dry }) // → { ok: true, lowest: 0, usual: 0, highest: 0 }
 */
export function stressFromTorque(
  input: BoxAndStem & {
    readonly torque: NewtonMetre
    readonly studCount: number
    readonly studDiameter: Millimetre
    readonly nutFactor: NutFactorRange
  },
): Outcome<{ readonly lowest: Megapascal; readonly usual: Megapascal; readonly highest: Megapascal }> {
  const { torque, studDiameter, nutFactor } = input
  const wrong = firstNegative({ torque }) ?? firstNotPositive({ studDiameter }) ?? notARange(nutFactor)
  if (wrong) return wrong
  const stressAt = (factor: Ratio) => {
    const loadPerStud = (torque * MILLIMETRES_PER_METRE) / (factor * studDiameter)
    return firstOutOfRange('torque', loadPerStud) ?? stressFromLoad({ ...input, loadPerStud: newtons(loadPerStud) })
  }
  const lowest = stressAt(nutFactor.high)
  if (!lowest.ok) return lowest
  const usual = stressAt(nutFactor.usual)
  if (!usual.ok) return usual
  const highest = stressAt(nutFactor.low)
  if (!highest.ok) return highest
  return { ok: true, lowest: lowest.packingStress, usual: usual.packingStress, highest: highest.packingStress }
}

function notARange({ low, usual, high }: NutFactorRange) {
  if (low > 0 && low <= usual && usual <= high && high < Infinity) return null
  return refuse('torque/nut-factor-not-a-range', 'nutFactor', `nut factors ${low}, ${usual}, ${high} must be above 0 and rise`)
}
