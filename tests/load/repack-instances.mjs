import { trades } from '../../packages/engines/dist/schedule/repack-plan/input.js'
import { sumOfCosts, valveSlotCost } from '../../packages/engines/dist/schedule/repack-plan/slot-cost.js'
import { normalDistribution } from '../../packages/engines/dist/stats/normal.js'
import { seededRandom } from '../../packages/fixtures/dist/random.js'

const WEEKS = 104
const OUTAGES = [
  { week: 30, weeks: 3 },
  { week: 60, weeks: 1 },
  { week: 82, weeks: 4 },
]
/** Of all valves, those whose packing comes to its end within the weeks of the plan or not long after. */
const IN_NEED = 0.35
const ISOLATE_ON_LINE = 0.6
const CRITICALITIES = [1, 1, 2, 3, 5, 10, 20]
const KINDS_OF_CORD = 12
/** In points: running out is 1, at a valve of criticality 1. */
const WEIGHTS = { costOfRunningOut: 1, costOfLeak: 0, costOfRepack: 0.35 }
const WAITING_PER_VALVE = 0.5
const WEEK_OF_WAITING = 115
/** Hours of fitters below what is needed, so that not all can be done; the other trades have some to spare. */
const SHARE_OF_HOURS = { fitting: 0.9, scaffolding: 1.2, isolating: 1.2 }

/** A plant whose valves are to be repacked within two years, the same for the same count and seed. */
export function repackInstance(valves, seed) {
  const random = seededRandom(seed, `repacks of ${valves}`)
  const times = slotTimes()
  const boundaries = []
  for (let count = 0; count < Math.round(valves * IN_NEED);) {
    const boundary = boundaryOf(boundaries.length, times, random)
    boundaries.push(boundary)
    count += boundary.valves
  }
  const slots = times.map((time) => ({
    id: time.id,
    isOutage: time.isOutage,
    day: time.week * 7,
    hours: hoursOf(time, boundaries, random),
  }))
  return {
    slots,
    boundaries,
    stockLimits: Array.from({ length: KINDS_OF_CORD }, (_, kind) => stockLimit(`cord ${kind}`, boundaries, random)),
  }
}

function slotTimes() {
  const onLine = Array.from({ length: WEEKS / 2 }, (_, fortnight) => ({
    id: `fortnight ${fortnight + 1}`,
    week: 2 * fortnight + 1,
    isOutage: false,
    weeks: 2,
  }))
  const outages = OUTAGES.map(({ week, weeks }, index) => ({ id: `outage ${index + 1}`, week, isOutage: true, weeks }))
  return [...onLine, ...outages].toSorted((one, other) => one.week - other.week)
}

function boundaryOf(index, times, random) {
  const count = 1 + Math.floor(random.exponential(1.5))
  const isolatesOnLine = random.chance(ISOLATE_ON_LINE)
  const usualWeeks = random.between(10, 150)
  const valves = Array.from({ length: count }, () => ({
    medianWeeks: Math.max(2, usualWeeks * random.lognormal(0.35)),
    spread: random.between(0.25, 0.55),
    criticality: random.choice(CRITICALITIES),
    itemId: `cord ${Math.floor(KINDS_OF_CORD * random.uniform() ** 1.6)}`,
    amount: random.integer(1, 3),
  }))
  const waiting = costIn(valves, WEEK_OF_WAITING)
  const more = WAITING_PER_VALVE * count
  return {
    id: `boundary ${index + 1}`,
    valves: count,
    isolatesOnLine,
    hours: { fitting: 2 + 3 * count, scaffolding: random.chance(0.3) ? random.integer(2, 6) : 0, isolating: 1 + 0.5 * count },
    uses: valves.map(({ itemId, amount }) => ({ itemId, amount })),
    costs: times.map(({ week }) => costIn(valves, week)),
    deferCost: { ...waiting, chance: waiting.chance + more, total: waiting.total + more },
    pin: null,
    excluded: [],
    closedSlots: [],
  }
}

function costIn(valves, week) {
  return sumOfCosts(
    valves.map(({ medianWeeks, spread, criticality }) => {
      const chanceOut = normalDistribution(Math.log(week / medianWeeks) / spread)
      const cost = valveSlotCost({ chanceOut, expectedLeaks: 0, lifeUsed: week / medianWeeks }, { ...WEIGHTS, criticality })
      if (!cost.ok) throw new Error(cost.problem.detail)
      const { chance, leaks, waste, total } = cost
      return { chance, leaks, waste, total }
    }),
  )
}

/** A fortnight has its share of what can be done on line, more or less; an outage by its length. */
function hoursOf({ isOutage, weeks }, boundaries, random) {
  const evenness = random.between(0.7, 1.3)
  const hours = trades.map((trade) => {
    const sum = (isOnLine) =>
      boundaries.filter(({ isolatesOnLine }) => isolatesOnLine === isOnLine).reduce((all, each) => all + each.hours[trade], 0)
    const share = SHARE_OF_HOURS[trade]
    const ofOutages = ((0.8 * sum(false) + 0.15 * sum(true)) * share * weeks) / 8
    const ofFortnight = (0.55 * sum(true) * share * evenness) / (WEEKS / 2)
    const least = isOutage ? 20 : 12
    return [trade, Math.max(least, isOutage ? ofOutages : ofFortnight)]
  })
  return Object.fromEntries(hours)
}

/** Less than its share of the cord is in stock until the next comes. */
function stockLimit(itemId, boundaries, random) {
  const weeks = random.integer(8, 37)
  const needed = boundaries.flatMap(({ uses }) => uses).reduce((sum, use) => (use.itemId === itemId ? sum + use.amount : sum), 0)
  return { itemId, beforeDay: weeks * 7, amount: Math.max(4, Math.floor((needed * weeks * random.between(0.4, 1)) / WEEKS)) }
}
