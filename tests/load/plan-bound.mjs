import loadHighs from 'highs'
import { PlanModel } from './plan-model.mjs'

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
