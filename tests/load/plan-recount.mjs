/** Counts a plan anew from its visits alone, so that the engine does not vouch for itself. */
export function recount({ weeks, crews: [crew], areas, visits, rules }, plan) {
  const weekOf = new Map(plan.visits.map(({ visitId, week }) => [visitId, week]))
  const areaOf = new Map(areas.map((area) => [area.id, area]))
  const work = Array.from({ length: weeks }, () => 0)
  const open = new Map()
  let missing = 0
  let outside = 0
  for (const { id, areaId, earliest, latest, hours } of visits) {
    const week = weekOf.get(id)
    if (week === undefined) {
      missing += 1
      continue
    }
    if (!(earliest <= week && week <= latest)) outside += 1
    work[week] += hours
    open.set(`${areaId}\n${week}`, { week, setUpHours: areaOf.get(areaId).setUpHours })
  }
  let setUpHours = 0
  for (const opened of open.values()) {
    work[opened.week] += opened.setUpHours
    setUpHours += opened.setUpHours
  }
  const overtimeHours = sum(work.map((load, week) => Math.max(0, load - crew.hours[week])))
  const fullHours = sum(
    work.map((load, week) => Math.max(0, Math.min(load, crew.hours[week]) - rules.easyShare * crew.hours[week])),
  )
  return {
    missing,
    outside,
    doubled: plan.visits.length - weekOf.size,
    setUpHours,
    overtimeHours,
    cost: setUpHours + rules.fullWeekPrice * fullHours + rules.overtimePrice * overtimeHours,
    busiest: Math.max(...work.map((load, week) => load / crew.hours[week])),
  }
}

function sum(values) {
  return values.reduce((total, value) => total + value, 0)
}
