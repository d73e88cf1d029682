import {
  type Megapascal,
  megapascals,
  type Millimetre,
  type Newton,
  type Ratio,
  ratio,
  type SquareMillimetre,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { knownThread } from '../threads/known-thread.ts'
import { type StressAreaMethod, stressArea } from '../threads/stress-area.ts'
import { firstNegative, firstOutOfRange } from './in-range.ts'

/** Property classes of ISO 898-1, and the common alloy steel of valve studs. */
export type StudGrade = '4.6' | '5.8' | '8.8' | '10.9' | '12.9' | 'B7'

/** B7 has no proof stress of its own: its least yield stress stands in. */
export type StrengthBasis = 'proof' | 'yield'

/** Above this share of the proof stress a stud is shown with a warning; the plant edits it. @source SRC-409 (docs/sources.md) */
export const usualUtilisationLimit: Ratio = ratio(0.7)

/** The 8.8 class is stronger above 16 mm; B7 weakens above 2-1/2 inches. */
const strengths: Readonly<Record<StudGrade, (diameter: Millimetre) => number | null>> = {
  '4.6': () => 225,
  '5.8': () => 380,
  '8.8': (diameter) => (diameter > 16 ? 600 : 580),
  '10.9': () => 830,
  '12.9': () => 970,
  B7: (diameter) => (diameter > 63.5 ? null : 724),
}

/**
 * Stress a stud must bear without lasting stretch, by grade and size.
 *
 * Holds at room temperature for a sound stud; it knows nothing of heat, corrosion or an unmarked stud.
 *
 * @source SRC-407 proof stresses of ISO 898-1 · SRC-408 B7 (docs/sources.md)
 * @returns MPa and what it is; `stud/grade-unknown` for any grade not listed, since a guess could break a stud
 * @example proofStress('8.8', mm(12)) // → { ok: true, proofStress: 580, basis: 'proof' }
 */
export function proofStress(
  grade: string,
  studDiameter: Millimetre,
): Outcome<{ readonly proofStress: Megapascal; readonly basis: StrengthBasis }> {
  const wrong = firstNotPositive({ studDiameter })
  if (wrong) return wrong
  const stress = Object.hasOwn(strengths, grade) ? strengths[grade as StudGrade](studDiameter) : null
  if (stress === null)
    return refuse(
      'stud/grade-unknown',
      'grade',
      `the strength of grade ${grade} at ${studDiameter} mm is not known: read the mark on the stud`,
    )
  return { ok: true, proofStress: megapascals(stress), basis: grade === 'B7' ? 'yield' : 'proof' }
}

/**
 * Tension in a stud; needs no grade.
 *
 *     stress = load / stress area      MPa; N, mm²
 *
 * Torsion from tightening is left out, as it springs back when the spanner comes off.
 *
 * @source SRC-410 stress in a stud (docs/sources.md)
 * @returns area, its method and stress, or a named problem
 * @example studStress('M12', newtons(0)).stress // → 0
 */
export function studStress(
  designation: string,
  loadPerStud: Newton,
): Outcome<{ readonly area: SquareMillimetre; readonly method: StressAreaMethod; readonly stress: Megapascal }> {
  const wrong = firstNegative({ loadPerStud })
  if (wrong) return wrong
  const found = stressArea(designation)
  if (!found.ok) return found
  const stress = loadPerStud / found.area
  return firstOutOfRange('loadPerStud', stress) ?? { ...found, stress: megapascals(stress) }
}

/**
 * How much of its strength a stud uses.
 *
 *     utilisation = stress / proof stress
 *
 * @source SRC-407 · SRC-408 · SRC-409 · SRC-410 (docs/sources.md)
 * @returns stress, strength, their ratio and how it stands to the limit; or a named problem
 * @example studUtilisation({ designation: 'M12', grade: '8.8', loadPerStud: newtons(48900), utilisationLimit: ratio(0.7) }).standing // → 'beyond strength'
 */
export function studUtilisation(input: {
  readonly designation: string
  readonly grade: string
  readonly loadPerStud: Newton
  readonly utilisationLimit: Ratio
}): Outcome<{
  readonly stress: Megapascal
  readonly proofStress: Megapascal
  readonly basis: StrengthBasis
  readonly utilisation: Ratio
  readonly standing: 'within limit' | 'above limit' | 'beyond strength'
}> {
  const { designation, grade, loadPerStud, utilisationLimit } = input
  const wrong = firstNotPositive({ utilisationLimit })
  if (wrong) return wrong
  const found = knownThread(designation)
  if (!found.ok) return found
  const loaded = studStress(designation, loadPerStud)
  if (!loaded.ok) return loaded
  const strength = proofStress(grade, found.thread.nominalDiameter)
  if (!strength.ok) return strength
  const share = loaded.stress / strength.proofStress
  const standing = share > 1 ? 'beyond strength' : share > utilisationLimit ? 'above limit' : 'within limit'
  return { ...strength, stress: loaded.stress, utilisation: ratio(share), standing }
}
