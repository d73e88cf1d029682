import { usualPlanRules } from '../../packages/engines/dist/schedule/round-plan/input.js'
import { seededRandom } from '../../packages/fixtures/dist/random.js'

const WEEKS = 52
const INTERVALS = [4, 4, 6, 8, 8, 12, 13, 13, 26, 26, 52, 52]
const TOLERANCE = 0.25
const VISIT_HOURS = [0.08, 0.1, 0.15]
const WEEK_SHARES = [0.7, 1, 1, 1.05, 1.1, 1]
const HOLIDAY_WEEKS = new Set([25, 51])
const HOLIDAY_SHARE = 0.4
/** Hours of the crew over the least it can do with: a tight year, or levelling would cost nothing. */
const SPARE = 1.06

/** A plant to plan: one crew, the same for the same count and seed. */
export function planInstance(valves, seed) {
  const random = seededRandom(seed, `rounds of ${valves}`)
  const areaCount = Math.max(4, Math.round(valves / Math.min(200, 25 + valves / 500)))
  const areas = Array.from({ length: areaCount }, (_, index) => ({
    id: `area ${index + 1}`,
    setUpHours: random.between(0.5, 2),
    closedWeeks: [],
    skill: null,
    crewId: null,
  }))
  const visits = Array.from({ length: valves }, (_, valve) => {
    // The power makes some areas fuller than others, as in a plant.
    const area = areas[Math.floor(areaCount * random.uniform() ** 1.2)]
    return visitsOfValve(valve, area.id, random)
  }).flat()
  return {
    weeks: WEEKS,
    crews: [{ id: 'crew', hours: hoursByWeek(leastHours(areas, visits) * SPARE), skills: [] }],
    areas,
    visits,
    // A hard limit would leave visits out, and the bound knows of none.
    rules: { ...usualPlanRules, mostShare: Infinity },
    seed,
  }
}

function visitsOfValve(valve, areaId, random) {
  const interval = random.choice(INTERVALS)
  const tolerance = Math.max(1, Math.round(interval * TOLERANCE))
  const hours = random.choice(VISIT_HOURS)
  const visits = []
  for (let due = random.integer(0, interval - 1); due < WEEKS; due += interval) {
    const earliest = Math.max(0, due - tolerance)
    const latest = Math.min(WEEKS - 1, due + tolerance)
    const id = `${valve + 1}/${visits.length + 1}`
    visits.push({ id, areaId, due, earliest, latest, hours, weight: 1, before: null, pin: null, frozen: null })
  }
  return visits
}

/** All visits, and each area opened as seldom as its windows let it be. */
function leastHours(areas, visits) {
  const byArea = new Map(areas.map(({ id }) => [id, []]))
  for (const visit of visits) byArea.get(visit.areaId).push(visit)
  const setUp = areas.reduce((sum, { id, setUpHours }) => sum + setUpHours * fewestOpenings(byArea.get(id)), 0)
  return visits.reduce((sum, { hours }) => sum + hours, setUp)
}

function fewestOpenings(visits) {
  let last = -1
  let count = 0
  for (const { earliest, latest } of visits.toSorted((one, other) => one.latest - other.latest)) {
    if (earliest <= last) continue
    last = latest
    count += 1
  }
  return count
}

function hoursByWeek(year) {
  const shares = Array.from(
    { length: WEEKS },
    (_, week) => WEEK_SHARES[week % WEEK_SHARES.length] * (HOLIDAY_WEEKS.has(week) ? HOLIDAY_SHARE : 1),
  )
  const all = shares.reduce((sum, share) => sum + share, 0)
  return shares.map((share) => (year * share) / all)
}
