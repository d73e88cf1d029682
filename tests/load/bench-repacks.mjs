import { loadSolver } from '../../apps/server/dist/platform/highs-solver.js'
import { planRepacks } from '../../packages/engines/dist/schedule/repack-plan/plan.js'
import { percent, timed } from './figures.mjs'
import { repackInstance } from './repack-instances.mjs'
import { leastRepackCost } from './repack-optimum.mjs'
import { recountRepacks } from './repack-recount.mjs'

const SEED = 1
const RELATIVE_GAP = 0.001
/** `solverSeconds` is what of the time the solver may take; the optimum of a small plant is found by it alone. */
const plants = [
  { valves: 200, mostGap: 0.005, mostSeconds: 3, solverSeconds: 2.2, hasOptimum: true },
  { valves: 2000, mostGap: 0.01, mostSeconds: 10, solverSeconds: 7 },
  { valves: 20_000, mostGap: 0.015, mostSeconds: 30, solverSeconds: 12 },
  { valves: 100_000, mostGap: Infinity, mostSeconds: Infinity, solverSeconds: 60 },
]

/** The plan of repacks beside its own bound, plain greedy, and the search without a solver. */
export async function benchRepacks({ isLarge }) {
  const solve = await loadSolver((line) => console.error(`the solver failed: ${line}`))
  const results = plants.filter(({ valves }) => valves < 100_000 || isLarge).map((plant) => measured(plant, solve))
  console.table(results.map(row))
  return results
}

function measured(plant, solve) {
  const input = repackInstance(plant.valves, SEED)
  const planned = (limits) => {
    const { result, seconds } = timed(() => planRepacks(input, { relativeGap: RELATIVE_GAP, ...limits }))
    if (!result.ok) throw new Error(result.problem.detail)
    return { plan: result, seconds }
  }
  const alone = planned({ solve: null, seconds: 0 })
  const { plan, seconds } = planned({ solve, seconds: plant.solverSeconds })
  const counted = recountRepacks(input, plan)
  const gap = counted.cost / plan.bound - 1
  const optimum = plant.hasOptimum ? leastRepackCost(input) : null
  const misses = missesOf(plant, { plan, counted, gap, seconds, optimum })
  return {
    valves: plant.valves,
    boundaries: input.boundaries.length,
    seed: SEED,
    greedyCost: plan.greedyCost,
    withoutSolver: { cost: alone.plan.cost, bound: alone.plan.bound, seconds: alone.seconds },
    bound: plan.bound,
    optimum,
    gap,
    seconds,
    mostGap: plant.mostGap,
    mostSeconds: plant.mostSeconds,
    ...counted,
    misses,
  }
}

function missesOf({ valves, mostGap, mostSeconds }, { plan, counted, gap, seconds, optimum }) {
  const lines = []
  if (!(gap <= mostGap)) lines.push(`the plan is ${percent(gap)} above the bound, at most ${percent(mostGap)}`)
  if (!(seconds <= mostSeconds)) lines.push(`it took ${seconds.toFixed(2)} s, at most ${mostSeconds} s`)
  if (!(gap >= -1e-9)) lines.push('the plan costs less than its bound')
  if (optimum !== null && !(plan.bound <= optimum * (1 + 1e-6) && counted.cost >= optimum * (1 - 1e-6)))
    lines.push(`the least cost is ${optimum}, but the bound ${plan.bound} and the cost ${counted.cost}`)
  if (!(Math.abs(plan.cost - counted.cost) <= 1e-6 * counted.cost))
    lines.push(`the engine says it costs ${plan.cost}, counted anew ${counted.cost}`)
  if (counted.faults.length > 0) lines.push(`${counted.faults.length} things the plan may not do, as: ${counted.faults[0]}`)
  return lines.map((line) => `${valves} valves, repacks: ${line}`)
}

function row({
  valves,
  boundaries,
  cost,
  greedyCost,
  withoutSolver,
  bound,
  gap,
  mostGap,
  seconds,
  mostSeconds,
  waiting,
  misses,
}) {
  const round = (value) => Number(value.toFixed(1))
  return {
    valves,
    boundaries,
    waiting,
    greedy: round(greedyCost),
    'without solver': round(withoutSolver.cost),
    'in s': Number(withoutSolver.seconds.toFixed(2)),
    cost: round(cost),
    bound: round(bound),
    gap: `${(gap * 100).toFixed(2)} %`,
    'at most': percent(mostGap),
    s: Number(seconds.toFixed(2)),
    'at most s': mostSeconds,
    met: misses.length === 0,
  }
}
