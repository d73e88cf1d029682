import type { MilpAnswer, MilpLimits, MilpModel, SolveMilp } from '@glandkeeper/engines/schedule/assignment/milp'
import * as highs from 'highs'

// Its types are those of its CommonJS form, but what Node loads here is the module.
const load = highs.default as unknown as () => Promise<highs.Highs>

/** One line of a fault of the solver can be 160 kB. */
const LONGEST_FAULT = 200

let loading: Promise<highs.Highs> | null = null

/**
 * Loads HiGHS, once in a thread, and gives a solver that holds the thread until it has an answer: for worker threads.
 *
 * @param onFault told in a line why there is no answer, when the solver failed
 */
export async function loadSolver(onFault: (line: string) => void = () => undefined): Promise<SolveMilp> {
  loading ??= load().catch((error: unknown) => {
    loading = null
    throw new Error(lineOf(error))
  })
  return solverOn(await loading, onFault)
}

export function solverOn(runtime: Pick<highs.Highs, 'createModel' | 'constants'>, onFault: (line: string) => void): SolveMilp {
  return (model, limits) => {
    try {
      return solved(runtime, model, limits)
    } catch (error) {
      onFault(lineOf(error))
      return null
    }
  }
}

function solved(
  runtime: Parameters<typeof solverOn>[0],
  { cost, ...rows }: MilpModel,
  { seconds, relativeGap, start }: MilpLimits,
): MilpAnswer | null {
  const size = { numCols: cost.length, numRows: rows.rowLower.length }
  const model = runtime.createModel({
    ...size,
    colCost: cost,
    colLower: new Float64Array(cost.length),
    colUpper: new Float64Array(cost.length).fill(1),
    rowLower: rows.rowLower,
    rowUpper: rows.rowUpper,
    integrality: new Int32Array(cost.length).fill(runtime.constants.variableType.integer),
    matrix: { format: 'csr', ...size, starts: rows.rowStart, indices: rows.column, values: rows.value },
  })
  try {
    model.options.set({ output_flag: false, time_limit: seconds, mip_rel_gap: relativeGap })
    if (start) model.setSolution({ colValue: start })
    model.run()
    if (model.info.get('primal_solution_status') !== runtime.constants.solutionStatus.feasible) return null
    return {
      objective: model.getObjectiveValue(),
      bound: Number(model.info.get('mip_dual_bound')),
      values: model.getSolution().colValue,
    }
  } finally {
    // What it holds is outside the reach of the garbage collector.
    model.dispose()
  }
}

function lineOf(error: unknown): string {
  return String(error).split('\n', 1).join('').slice(0, LONGEST_FAULT)
}
