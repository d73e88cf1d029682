import { type Millimetre, mm2, type SquareMillimetre } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'

/** The hole a leak comes through: a round one by its diameter, any other by its area. */
export type Opening = { readonly diameter: Millimetre } | { readonly area: SquareMillimetre }

/**
 * Area of an opening.
 *
 *     area = pi diameter² / 4       mm²
 *
 * A gland leaks through a thin ring or a scratch, never a drilled hole: the opening stands for one that would pass as much.
 *
 * @source SRC-500 area of a circle (docs/sources.md)
 * @returns mm², or `number/not-positive`
 * @example areaOfOpening({ diameter: mm(2) }) // → { ok: true, area: 3.141592654 }
 */
export function areaOfOpening(opening: Opening): Outcome<{ readonly area: SquareMillimetre }> {
  const refused = firstNotPositive(opening)
  if (refused) return refused
  const area = 'area' in opening ? opening.area : (Math.PI / 4) * opening.diameter ** 2
  if (!Number.isFinite(area)) return refuse('number/out-of-range', 'diameter', 'the diameter is too large to compute with')
  return { ok: true, area: mm2(area) }
}
