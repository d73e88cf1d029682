import {
  type Megapascal,
  megapascals,
  type Millimetre,
  mm2,
  type Newton,
  newtons,
  type SquareMillimetre,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { firstNegative, firstOutOfRange, notACount } from './in-range.ts'

export interface BoxAndStem {
  readonly boxBore: Millimetre
  readonly stemDiameter: Millimetre
}

/**
 * Area of packing the follower presses on.
 *
 *     area = π/4 · (bore² - stem²)      mm²
 *
 * Holds for a follower that fills the space; it knows nothing of the clearance at its sides.
 *
 * @source SRC-402 annulus (docs/sources.md)
 * @returns mm², or a named problem
 * @example packingArea({ boxBore: mm(35), stemDiameter: mm(22) }) // → { ok: true, area: 581.9800390775092 }
 */
export function packingArea({ boxBore, stemDiameter }: BoxAndStem): Outcome<{ readonly area: SquareMillimetre }> {
  const wrong = firstNotPositive({ boxBore, stemDiameter })
  if (wrong) return wrong
  if (!(boxBore > stemDiameter)) {
    const detail = `the bore of ${boxBore} mm must be larger than the stem of ${stemDiameter} mm`
    return refuse('gland/bore-not-larger-than-stem', 'boxBore', detail)
  }
  // As a product: the difference of two squares loses figures when bore and stem are close.
  const area = (Math.PI / 4) * (boxBore - stemDiameter) * (boxBore + stemDiameter)
  return firstOutOfRange('boxBore', area) ?? { ok: true, area: mm2(area) }
}

/**
 * Load of the gland, and of each stud, for a stress in the packing.
 *
 *     load = stress · area        N, MPa, mm²
 *     each = load / studs         N, when the studs share it equally
 *
 * @source SRC-402 annulus · SRC-403 load from stress (docs/sources.md)
 * @returns area, whole load and load of each stud, or a named problem
 * @example glandLoad({ boxBore: mm(35), stemDiameter: mm(22), packingStress: megapascals(20), studCount: 2 }).loadPerStud // → 5819.800390775092
 */
export function glandLoad(
  input: BoxAndStem & { readonly packingStress: Megapascal; readonly studCount: number },
): Outcome<{ readonly area: SquareMillimetre; readonly glandLoad: Newton; readonly loadPerStud: Newton }> {
  const { packingStress, studCount } = input
  const wrong = firstNegative({ packingStress }) ?? notACount('studCount', studCount)
  if (wrong) return wrong
  const annulus = packingArea(input)
  if (!annulus.ok) return annulus
  const load = packingStress * annulus.area
  const tooLarge = firstOutOfRange('packingStress', load)
  if (tooLarge) return tooLarge
  return { ok: true, area: annulus.area, glandLoad: newtons(load), loadPerStud: newtons(load / studCount) }
}

/**
 * Stress in the packing under its follower for a load in each stud: the other way round.
 *
 *     stress = each · studs / area      MPa, N, mm²
 *
 * @source SRC-403 load from stress (docs/sources.md)
 * @returns area, whole load and stress, or a named problem
 * @example stressFromLoad({ boxBore: mm(35), stemDiameter: mm(22), loadPerStud: newtons(5819.800390775092), studCount: 2 }).packingStress // → 20
 */
export function stressFromLoad(
  input: BoxAndStem & { readonly loadPerStud: Newton; readonly studCount: number },
): Outcome<{ readonly area: SquareMillimetre; readonly glandLoad: Newton; readonly packingStress: Megapascal }> {
  const { loadPerStud, studCount } = input
  const wrong = firstNegative({ loadPerStud }) ?? notACount('studCount', studCount)
  if (wrong) return wrong
  const annulus = packingArea(input)
  if (!annulus.ok) return annulus
  const load = loadPerStud * studCount
  const stress = load / annulus.area
  const tooLarge = firstOutOfRange('loadPerStud', load, stress)
  if (tooLarge) return tooLarge
  return { ok: true, area: annulus.area, glandLoad: newtons(load), packingStress: megapascals(stress) }
}
