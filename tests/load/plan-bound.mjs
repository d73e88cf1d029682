import { createRequire } from 'node:module'
import { PlanModel } from './plan-model.mjs'

// The server's own: it is a package of its workspace.
const loadHighs = createRequire(new URL('../../apps/server/package.json', import.meta.url))('highs')
const highs = await loadHighs()
const { optimal } = highs.constants.modelStatus

/** Below what no plan of the input can cost: the linear model, every area opened by fractions. */
export function linearBound(input) {
  return solved(new PlanModel(input).arrays(false), { solver: 'ipm' }, (model) =>
    model.getModelStatus() === optimal ? model.getObjectiveValue() : 0,
  )
}

/** The same with areas opened wholly or not at all: the best bound the solver has proved in that time. */
export function wholeBound(input, seconds, holdsStretches) {
  return solved(new PlanModel(input, holdsStretches).arrays(true), { time_limit: seconds }, (model) =>
    model.info.get('mip_dual_bound'),
  )
}

/** The least cost of columns that are 0 or 1 each, in rows of terms between two limits. */
export function solvedToTheEnd({ cost, rows }) {
  const size = { numCols: cost.length, numRows: rows.length }
  const terms = rows.flatMap((row) => row.terms)
  let entries = 0
  const arrays = {
    ...size,
    colCost: Float64Array.from(cost),
    colLower: new Float64Array(cost.length),
    colUpper: new Float64Array(cost.length).fill(1),
    rowLower: Float64Array.from(rows, ({ lower }) => lower),
    rowUpper: Float64Array.from(rows, ({ upper }) => upper),
    integrality: new Int32Array(cost.length).fill(1),
    matrix: {
      format: 'csr',
      ...size,
      starts: Int32Array.from([0, ...rows.map((row) => (entries += row.terms.length))]),
      indices: Int32Array.from(terms, ([column]) => column),
      values: Float64Array.from(terms, ([, value]) => value),
    },
  }
  return solved(arrays, { mip_rel_gap: 0 }, (model) => (model.getModelStatus() === optimal ? model.getObjectiveValue() : NaN))
}

function solved(arrays, options, answer) {
  const model = highs.createModel(arrays)
  try {
    model.options.set({ output_flag: false, ...options })
    model.run()
    return answer(model)
  } finally {
    model.dispose()
  }
}
