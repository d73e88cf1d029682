import { planRounds } from '../../packages/engines/dist/schedule/round-plan/plan.js'
import { percent, timed } from './figures.mjs'
import { linearBound, wholeBound } from './plan-bound.mjs'
import { planInstance } from './plan-instances.mjs'
import { recount } from './plan-recount.mjs'

const SEED = 1
const RUNS = 3
/** `solverSeconds` is null where the solver gets nowhere with whole openings in two minutes. */
const plants = [
  { valves: 200, mostGap: 0.06, mostSeconds: 1, solverSeconds: 90, holdsStretches: true },
  { valves: 2000, mostGap: 0.03, mostSeconds: 1, solverSeconds: 120 },
  { valves: 20_000, mostGap: 0.04, mostSeconds: 4, solverSeconds: null },
  { valves: 100_000, mostGap: Infinity, mostSeconds: Infinity, solverSeconds: null },
]

/** The plan of rounds beside a lower bound that a solver proves from the same plant. */
export function benchRounds({ isQuick, isLarge }) {
  const results = plants.filter(({ valves }) => valves < 100_000 || isLarge).map((plant) => measured(plant, isQuick))
  console.table(results.map(row))
  return results
}

function measured(plant, isQuick) {
  const input = planInstance(plant.valves, SEED)
  const runs = Array.from({ length: RUNS }, () => timed(() => planRounds(input)))
  const [{ result: plan }] = runs
  if (!plan.ok) throw new Error(plan.problem.detail)
  const seconds = runs.map((run) => run.seconds).toSorted((one, other) => one - other)[RUNS >> 1]
  const counted = recount(input, plan)
  const bound = boundOf(input, isQuick ? { ...plant, solverSeconds: null } : plant)
  const gap = counted.cost / bound - 1
  return {
    valves: plant.valves,
    visits: input.visits.length,
    areas: input.areas.length,
    seed: SEED,
    seconds,
    bound,
    gap,
    ownBound: plan.bound,
    ...counted,
    inDueWeeks: plan.inDueWeeks,
    // The linear bound of a small plant is too far below for the target to mean anything.
    misses: missesOf(isQuick && plant.solverSeconds ? { ...plant, mostGap: Infinity } : plant, { plan, counted, seconds, gap }),
  }
}

/** The better of both: the linear one is quick and, for many areas, all there is. */
function boundOf(input, { solverSeconds, holdsStretches }) {
  const linear = linearBound(input)
  return solverSeconds === null ? linear : Math.max(linear, wholeBound(input, solverSeconds, holdsStretches))
}

function missesOf({ valves, mostGap, mostSeconds }, { plan, counted, seconds, gap }) {
  const { missing, outside, doubled, cost } = counted
  const lines = []
  if (!(gap <= mostGap)) lines.push(`the plan is ${percent(gap)} above the bound, at most ${percent(mostGap)}`)
  if (!(gap >= -1e-6)) lines.push('the plan costs less than the bound, so the bound is wrong')
  if (!(seconds <= mostSeconds)) lines.push(`it took ${seconds.toFixed(2)} s, at most ${mostSeconds} s`)
  if (missing + outside + doubled > 0)
    lines.push(`${missing} visits missing, ${outside} outside their window, ${doubled} planned twice`)
  if (!(Math.abs(plan.cost - cost) <= 1e-6 * cost)) lines.push(`the engine says it costs ${plan.cost}, counted anew ${cost}`)
  return lines.map((line) => `${valves} valves: ${line}`)
}

function row(result) {
  return {
    valves: result.valves,
    visits: result.visits,
    areas: result.areas,
    cost: Number(result.cost.toFixed(1)),
    s: Number(result.seconds.toFixed(2)),
    bound: Number(result.bound.toFixed(1)),
    gap: percent(result.gap),
    'own bound': Number(result.ownBound.toFixed(1)),
    'set-up h': Math.round(result.setUpHours),
    'set-up h, due weeks': Math.round(result.inDueWeeks.setUpHours),
    'overtime h': Number(result.overtimeHours.toFixed(1)),
    'overtime h, due weeks': Math.round(result.inDueWeeks.overtimeHours),
    'busiest week': percent(result.busiest),
  }
}
