import { type Millimetre, mm } from '@glandkeeper/units/quantity'

/** What is known of one gland. Null is not measured yet: nothing is computed from it. */
export interface Gland {
  readonly boxBore: Millimetre | null
  readonly stemDiameter: Millimetre | null
  readonly boxDepth: Millimetre | null
  readonly noseLength: Millimetre | null
  /** Length of nose that must stay inside the box to guide the follower. */
  readonly leastEngagement: Millimetre
  /** Gap left between follower flange and box face when the travel is used up. */
  readonly keepClear: Millimetre
  /** Designation of the stud thread: see threads/stud-threads. */
  readonly studThread: string | null
}

export type GlandProblem =
  | {
      readonly code: 'gland/bore-not-larger-than-stem'
      readonly field: 'boxBore'
      readonly boxBore: number
      readonly stemDiameter: number
    }
  | {
      readonly code: 'gland/nose-shorter-than-engagement'
      readonly field: 'noseLength'
      readonly noseLength: number
      readonly leastEngagement: number
    }
  | {
      readonly code: 'gland/nose-longer-than-box'
      readonly field: 'noseLength'
      readonly noseLength: number
      readonly boxDepth: number
    }

/**
 * Section of packing that fills the space between stem and box: half the difference of the diameters.
 * Holds for a stem in the middle of its box.
 *
 * @source SRC-101 section from bore and shaft (docs/sources.md)
 * @returns millimetres, null where bore or stem is not measured or the bore is not the larger
 * @example packingSection(mm(45), mm(28)) // → 8.5
 */
export function packingSection(boxBore: Millimetre | null, stemDiameter: Millimetre | null): Millimetre | null {
  if (boxBore === null || stemDiameter === null || !(boxBore > stemDiameter)) return null
  return mm((boxBore - stemDiameter) / 2)
}

/**
 * Contradictions between the dimensions of one gland. Dimensions nobody measured contradict nothing.
 *
 * @example glandProblems({ ...gland, boxBore: mm(20), stemDiameter: mm(22) })[0]?.code // → 'gland/bore-not-larger-than-stem'
 */
export function glandProblems(gland: Gland): GlandProblem[] {
  const { boxBore, stemDiameter, boxDepth, noseLength, leastEngagement } = gland
  const problems: GlandProblem[] = []
  if (boxBore !== null && stemDiameter !== null && !(boxBore > stemDiameter)) {
    problems.push({ code: 'gland/bore-not-larger-than-stem', field: 'boxBore', boxBore, stemDiameter })
  }
  if (noseLength !== null && !(noseLength > leastEngagement)) {
    problems.push({ code: 'gland/nose-shorter-than-engagement', field: 'noseLength', noseLength, leastEngagement })
  }
  if (noseLength !== null && boxDepth !== null && !(noseLength < boxDepth)) {
    problems.push({ code: 'gland/nose-longer-than-box', field: 'noseLength', noseLength, boxDepth })
  }
  return problems
}
