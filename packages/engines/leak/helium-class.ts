import type { Millimetre } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import type { Source } from '../source.ts'
import { type MillibarLitrePerSecond, millibarLitresPerSecond } from './leak-quantity.ts'

export type HeliumClass = 'AH' | 'BH' | 'CH'

/** mbar·L/s for one millimetre of stem diameter. */
const limits: Readonly<Record<HeliumClass, { readonly perMillimetre: number; readonly mark: Source['mark'] }>> = {
  AH: { perMillimetre: 1.78e-7, mark: 'read' },
  BH: { perMillimetre: 1.78e-6, mark: 'from memory' },
  CH: { perMillimetre: 1.78e-4, mark: 'from memory' },
}

/**
 * Most helium a stem seal of this tightness class may pass in the type test.
 *
 *     limit = class figure * stem diameter        mbar·L/s, mm
 *
 * A limit of a test rig, not of a valve in the plant: it says nothing about the fluid that leaks there.
 *
 * @source SRC-516 class AH · SRC-517 classes BH and CH (docs/sources.md)
 * @returns mbar·L/s with its mark, or `number/not-positive`
 * @example heliumStemLimit({ heliumClass: 'CH', stemDiameter: mm(20) }) // → { ok: true, limit: 0.00356, mark: 'from memory' }
 */
export function heliumStemLimit(input: {
  readonly heliumClass: HeliumClass
  readonly stemDiameter: Millimetre
}): Outcome<{ readonly limit: MillibarLitrePerSecond; readonly mark: Source['mark'] }> {
  const { heliumClass, stemDiameter } = input
  const refused = firstNotPositive({ stemDiameter })
  if (refused) return refused
  const { perMillimetre, mark } = limits[heliumClass]
  const limit = perMillimetre * stemDiameter
  if (!Number.isFinite(limit)) return refuse('number/out-of-range', 'stemDiameter', 'the stem is too large to compute with')
  return { ok: true, limit: millibarLitresPerSecond(limit), mark }
}
