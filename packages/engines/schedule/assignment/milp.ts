/**
 * A linear model whose every column is 0 or 1, to be made as cheap as can be. Rows stand one behind another: row `r` has
 * the entries `rowStart[r]` up to `rowStart[r + 1]`, and their sum is from `rowLower[r]` to `rowUpper[r]`.
 */
export interface MilpModel {
  /** By column. */
  readonly cost: Float64Array
  readonly rowLower: Float64Array
  readonly rowUpper: Float64Array
  readonly rowStart: Int32Array
  /** By entry. */
  readonly column: Int32Array
  readonly value: Float64Array
}

export interface MilpLimits {
  readonly seconds: number
  /** Share of the cost the answer may be above the bound. */
  readonly relativeGap: number
  /** By column, an answer to start from. */
  readonly start: Float64Array | null
}

export interface MilpAnswer {
  readonly objective: number
  /** No answer of the model costs less. */
  readonly bound: number
  /** By column; near 0 or 1. */
  readonly values: Float64Array
}

/** A solver from outside, called and waited for; null where it found no answer. Engines know none of their own. */
export type SolveMilp = (model: MilpModel, limits: MilpLimits) => MilpAnswer | null
