import { type Outcome, refuse } from '../../outcome.ts'
import type { SlotCost } from './input.ts'

/** What is known of one valve by the day of a slot. */
export interface ValveBefore {
  /** Chance that its reserve is used up before, 0 to 1. */
  readonly chanceOut: number
  /** How many leaks are to be expected before. */
  readonly expectedLeaks: number
  /** Share of the packing life that is used by then; more than 1 when it lasts longer than was to be expected. */
  readonly lifeUsed: number
}

/** In one unit for all: money or points. */
export interface CostWeights {
  readonly costOfRunningOut: number
  readonly costOfLeak: number
  readonly costOfRepack: number
  /** How much running out and leaks weigh at this valve; 1 is usual. */
  readonly criticality: number
}

/**
 * What it costs to repack one valve in one slot:
 *
 *     chance = chance of running out before × cost of running out × criticality
 *     leaks  = leaks expected before × cost of a leak × criticality
 *     waste  = share of packing life that is left × cost of a repack
 *
 * @source SRC-735 what a slot costs (docs/sources.md)
 * @returns the parts and their sum in the unit of the weights, or `slot-cost/chance`, `slot-cost/leaks`, `slot-cost/life`, `slot-cost/weights`
 * @example valveSlotCost({ chanceOut: 0.1, expectedLeaks: 0.5, lifeUsed: 0.8 }, { costOfRunningOut: 1000, costOfLeak: 200, costOfRepack: 150, criticality: 2 }).total // → 430
 */
export function valveSlotCost({ chanceOut, expectedLeaks, lifeUsed }: ValveBefore, weights: CostWeights): Outcome<SlotCost> {
  const { costOfRunningOut, costOfLeak, costOfRepack, criticality } = weights
  if (!(chanceOut >= 0 && chanceOut <= 1)) return refuse('slot-cost/chance', 'chanceOut', `a chance is 0 to 1, not ${chanceOut}`)
  if (!isAmount(expectedLeaks)) return refuse('slot-cost/leaks', 'expectedLeaks', `leaks are 0 or more, not ${expectedLeaks}`)
  if (!isAmount(lifeUsed)) return refuse('slot-cost/life', 'lifeUsed', `the life used is 0 or more, not ${lifeUsed}`)
  if (![costOfRunningOut, costOfLeak, costOfRepack, criticality].every(isAmount))
    return refuse('slot-cost/weights', 'weights', 'costs and criticality are 0 or more')
  const chance = chanceOut * costOfRunningOut * criticality
  const leaks = expectedLeaks * costOfLeak * criticality
  const waste = Math.max(0, 1 - lifeUsed) * costOfRepack
  return { ok: true, chance, leaks, waste, total: chance + leaks + waste }
}

/**
 * Costs added part by part: those of the valves of a boundary, or of the boundaries of a plan.
 *
 * @example sumOfCosts([{ chance: 1, leaks: 2, waste: 0, total: 3 }, { chance: 1, leaks: 0, waste: 1, total: 2 }]).total // → 5
 */
export function sumOfCosts(costs: Iterable<SlotCost>): SlotCost {
  let [chance, leaks, waste, total] = [0, 0, 0, 0]
  for (const cost of costs) {
    chance += cost.chance
    leaks += cost.leaks
    waste += cost.waste
    total += cost.total
  }
  return { chance, leaks, waste, total }
}

/** An uncertain day: as a planner names it, in days from today. */
export interface UncertainDay {
  readonly earliest: number
  readonly likely: number
  readonly latest: number
}

/**
 * The chance that something has happened before an uncertain day: its expectation over the triangular distribution
 * from the earliest over the likely to the latest day. Each side is integrated over the root of its quantile by a
 * Gauss-Legendre rule with eight points, which is exact where the chance is a polynomial up to degree 14 on that side.
 *
 * @param chanceBefore chance by day, 0 to 1
 * @source SRC-736 triangular distribution; SRC-737 Gauss-Legendre rule (docs/sources.md)
 * @returns the chance, or `repacks/days`, `repacks/chance`
 * @example chanceOverDates((day) => day / 100, { earliest: 10, likely: 20, latest: 60 }).chance // → 0.3
 */
export function chanceOverDates(
  chanceBefore: (day: number) => number,
  { earliest, likely, latest }: UncertainDay,
): Outcome<{ readonly chance: number }> {
  if (![earliest, likely, latest].every(Number.isFinite) || !(earliest <= likely && likely <= latest))
    return refuse('repacks/days', 'likely', `days ${earliest}, ${likely} and ${latest} are not earliest, likely and latest`)
  const width = latest - earliest
  const side = (edge: number) => (edge === likely ? 0 : overSide((root) => chanceBefore(edge + (likely - edge) * root)))
  const chance =
    width > 0 ? ((likely - earliest) * side(earliest) + (latest - likely) * side(latest)) / width : chanceBefore(likely)
  // NaN too.
  if (!(chance >= -OFF_BY && chance <= 1 + OFF_BY))
    return refuse('repacks/chance', 'chanceBefore', `a chance is 0 to 1, not ${chance}`)
  return { ok: true, chance: Math.min(1, Math.max(0, chance)) }
}

const OFF_BY = 1e-9

/** Mean over one side of the triangle, whose density rises with the root of the quantile: ∫ 2r f(r) dr from 0 to 1. */
function overSide(of: (root: number) => number): number {
  let sum = 0
  for (const { at, weight } of GAUSS_LEGENDRE) sum += weight * 2 * at * of(at)
  return sum
}

/** Half of the points from -1 to 1 with their weights; the other half lies opposite. */
const HALF_OF_POINTS: readonly (readonly [number, number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
]
const GAUSS_LEGENDRE = HALF_OF_POINTS.flatMap(([point, weight]) => [
  { at: (1 - point) / 2, weight: weight / 2 },
  { at: (1 + point) / 2, weight: weight / 2 },
])

const isAmount = (value: number) => value >= 0 && value < Infinity
