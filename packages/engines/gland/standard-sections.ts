import { MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { type Millimetre, mm } from '@glandkeeper/units/quantity'

/** One side of a square cord as it is listed and sold. */
export interface StandardSection {
  /** As on the box of cord: `8 mm`, `5/16 in`. */
  readonly designation: string
  readonly system: 'metric' | 'inch'
  readonly size: Millimetre
  /** The metric size the same cord is sold as, where trade takes one for the other; null where it does not. */
  readonly soldAs: Millimetre | null
}

const metricSizes = [3, 4, 5, 6, 6.5, 8, 9.5, 10, 11, 12, 12.5, 14, 16, 18, 20, 22, 25]
const SMALLEST_SIXTEENTHS = 2
const LARGEST_SIXTEENTHS = 16

/**
 * An inch section in sixteenths, named as on a rule.
 *
 *     size = sixteenths / 16 · 25.4     mm
 *
 * @source SRC-105 5/16 inch is sold as 8 mm, 0.0625 mm more than it measures (docs/sources.md)
 * @example inchSection(5) // → { designation: '5/16 in', system: 'inch', size: 7.9375, soldAs: 8 }
 */
export function inchSection(sixteenths: number): StandardSection {
  return {
    designation: `${fraction(sixteenths)} in`,
    system: 'inch',
    size: mm((sixteenths / 16) * MILLIMETRES_PER_INCH),
    soldAs: sixteenths === 5 ? mm(8) : null,
  }
}

/** @example metricSection(mm(6.5)) // → { designation: '6.5 mm', system: 'metric', size: 6.5, soldAs: null } */
export function metricSection(size: Millimetre): StandardSection {
  return { designation: `${size} mm`, system: 'metric', size, soldAs: null }
}

/**
 * The sections a store is likely to hold: 17 metric, and 1/8 to 1 inch by sixteenths.
 * A default to be replaced by the plant's own list; no standard was read for it.
 *
 * @source SRC-104 standard sections, from memory (docs/sources.md)
 */
export const standardSections: readonly StandardSection[] = [
  ...metricSizes.map((size) => metricSection(mm(size))),
  ...Array.from({ length: LARGEST_SIXTEENTHS - SMALLEST_SIXTEENTHS + 1 }, (_, index) => inchSection(SMALLEST_SIXTEENTHS + index)),
]

function fraction(sixteenths: number): string {
  let top = sixteenths
  let bottom = 16
  while (top % 2 === 0 && bottom > 1) {
    top /= 2
    bottom /= 2
  }
  return bottom === 1 ? `${top}` : `${top}/${bottom}`
}
