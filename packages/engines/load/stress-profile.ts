import {
  type Bar,
  type Megapascal,
  megapascals,
  type Millimetre,
  type Quantity,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { type BoxAndStem, packingArea } from './gland-load.ts'
import { firstNegative, firstOutOfRange } from './in-range.ts'

/** Friction and lateral stress of the packing at bore and stem. Lateral ratio: radial stress over axial stress. */
export interface PackingWalls extends BoxAndStem {
  readonly boreFriction: Ratio
  readonly boreLateralRatio: Ratio
  readonly stemFriction: Ratio
  readonly stemLateralRatio: Ratio
}

export type PerMillimetre = Quantity<'1/mm'>

/** Where the plant has no rule of its own, the bottom ring should press on the stem at least this many times the pressure. */
export const usualBottomFactor: Ratio = ratio(1)

const MEGAPASCALS_PER_BAR = 0.1

/**
 * Radial over axial stress in an elastic solid that cannot spread.
 *
 *     lateral ratio = ν / (1 - ν)      ν: Poisson's ratio, above 0 up to 0.5
 *
 * Real braids give less or more: a measured ratio comes first.
 *
 * @source SRC-411 (docs/sources.md)
 * @returns the ratio, or `packing/poisson-out-of-range`
 * @example lateralRatio(ratio(0.36)) // → { ok: true, lateralRatio: 0.5625 }
 */
export function lateralRatio(poissonRatio: Ratio): Outcome<{ readonly lateralRatio: Ratio }> {
  if (!(poissonRatio > 0 && poissonRatio <= 0.5)) {
    const detail = `Poisson's ratio must be above 0 and at most 0.5, not ${poissonRatio}`
    return refuse('packing/poisson-out-of-range', 'poissonRatio', detail)
  }
  return { ok: true, lateralRatio: ratio(poissonRatio / (1 - poissonRatio)) }
}

/**
 * How fast friction at bore and stem eats the axial stress, for each millimetre down the set.
 *
 *     decay = 4 · (μ K at bore · bore + μ K at stem · stem) / (bore² - stem²)      1/mm
 *     decay = 4 · μ · K / (bore - stem)                                            when both sides are alike
 *
 * @source SRC-412 equilibrium of a slice, closed form from memory (docs/sources.md)
 * @returns decay for each millimetre, or a named problem
 * @example decayRate({ boxBore: mm(35), stemDiameter: mm(22), boreFriction: ratio(0.13), boreLateralRatio: ratio(0.5), stemFriction: ratio(0.13), stemLateralRatio: ratio(0.5) }) // → { ok: true, decayRate: 0.02 }
 */
export function decayRate(walls: PackingWalls): Outcome<{ readonly decayRate: PerMillimetre }> {
  const { boxBore, stemDiameter, boreFriction, boreLateralRatio, stemFriction, stemLateralRatio } = walls
  const wrong = firstNegative({ boreFriction, boreLateralRatio, stemFriction, stemLateralRatio })
  if (wrong) return wrong
  const annulus = packingArea(walls)
  if (!annulus.ok) return annulus
  const drag = Math.PI * (boreFriction * boreLateralRatio * boxBore + stemFriction * stemLateralRatio * stemDiameter)
  const decay = drag / annulus.area
  return firstOutOfRange('boreFriction', drag, decay) ?? { ok: true, decayRate: decay as PerMillimetre }
}

/**
 * Axial stress down the set: under the follower and under each ring.
 *
 *     stress at depth = stress under follower · exp(-decay · depth)      MPa; 1/mm, mm
 *
 * Holds for a set that slides at both walls while it is loaded, with friction and lateral ratio the same in every ring.
 * It knows nothing of rings seated one by one, of relaxation or of the pressure of the fluid.
 *
 * @source SRC-412 exponential fall (docs/sources.md)
 * @returns stress under the follower first, then under each ring from the top; or a named problem
 * @example stressProfile({ boxBore: mm(45), stemDiameter: mm(28), boreFriction: ratio(0), boreLateralRatio: ratio(1), stemFriction: ratio(0), stemLateralRatio: ratio(1), packingStress: megapascals(25), ringHeights: [mm(8), mm(8)] }).axialStresses // → [25, 25, 25]
 */
export function stressProfile(
  input: PackingWalls & { readonly packingStress: Megapascal; readonly ringHeights: readonly Millimetre[] },
): Outcome<{
  readonly decayRate: PerMillimetre
  readonly axialStresses: readonly Megapascal[]
  readonly bottomStress: Megapascal
  /** Share of the stress under the follower that is left under the bottom ring. */
  readonly shareLeft: Ratio
}> {
  const { packingStress, ringHeights } = input
  const wrong = firstNegative({ packingStress })
  if (wrong) return wrong
  if (ringHeights.length === 0) return refuse('packing/no-rings', 'ringHeights', 'a set has at least one ring')
  const badRing = ringHeights.find((height) => !(height > 0 && height < Infinity))
  if (badRing !== undefined) return refuse('number/not-positive', 'ringHeights', `a ring must be higher than 0, not ${badRing}`)
  const decay = decayRate(input)
  if (!decay.ok) return decay

  const axialStresses = [packingStress]
  let depth = 0
  for (const height of ringHeights) {
    depth += height
    const tooLarge = firstOutOfRange('ringHeights', depth, decay.decayRate * depth)
    if (tooLarge) return tooLarge
    axialStresses.push(megapascals(packingStress * Math.exp(-(decay.decayRate * depth))))
  }
  const bottomStress = axialStresses.at(-1) ?? packingStress
  return {
    ok: true,
    decayRate: decay.decayRate,
    axialStresses,
    bottomStress,
    shareLeft: ratio(Math.exp(-(decay.decayRate * depth))),
  }
}

/**
 * Whether the bottom ring still presses on the stem harder than the fluid presses on it.
 *
 *     radial = lateral ratio · axial stress under the bottom ring      MPa
 *     needed = factor · pressure                                       MPa; bar above atmosphere, 0.1 MPa each
 *
 * A bottom ring that does not hold leaves the sealing to those above it: a warning, not a proof of a leak.
 *
 * @source SRC-413 limit for the bottom ring (docs/sources.md)
 * @returns both stresses and whether the ring holds, or a named problem
 * @example bottomRingHolds({ bottomStress: megapascals(12), stemLateralRatio: ratio(0.5), systemPressure: bar(40), pressureFactor: ratio(1) }) // → { ok: true, radialStress: 6, neededStress: 4, holds: true }
 */
export function bottomRingHolds(input: {
  readonly bottomStress: Megapascal
  readonly stemLateralRatio: Ratio
  readonly systemPressure: Bar
  readonly pressureFactor: Ratio
}): Outcome<{ readonly radialStress: Megapascal; readonly neededStress: Megapascal; readonly holds: boolean }> {
  const { bottomStress, stemLateralRatio, systemPressure, pressureFactor } = input
  const wrong = firstNegative({ bottomStress, stemLateralRatio, pressureFactor })
  if (wrong) return wrong
  if (!Number.isFinite(systemPressure)) return refuse('number/out-of-range', 'systemPressure', 'the pressure must be a number')
  const radial = stemLateralRatio * bottomStress
  const needed = Math.max(0, pressureFactor * systemPressure * MEGAPASCALS_PER_BAR)
  const tooLarge = firstOutOfRange('bottomStress', radial) ?? firstOutOfRange('systemPressure', needed)
  if (tooLarge) return tooLarge
  return { ok: true, radialStress: megapascals(radial), neededStress: megapascals(needed), holds: radial >= needed }
}
