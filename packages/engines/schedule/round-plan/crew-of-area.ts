import type { Crew, RoundPlanInput } from './input.ts'

/**
 * Which crew walks which area: the one that was named, otherwise of those with the skill the one with most hours left,
 * the area with most work first. An area that nobody may walk has no entry.
 */
export function crewsOfAreas({ crews, areas, visits }: RoundPlanInput): ReadonlyMap<string, Crew> {
  const work = new Map(areas.map(({ id }) => [id, 0]))
  for (const { areaId, hours } of visits) work.set(areaId, (work.get(areaId) ?? 0) + hours)
  const given = new Map(crews.map(({ id }) => [id, 0]))
  const chosen = new Map<string, Crew>()
  const mostFirst = areas.toSorted(
    (one, other) =>
      Number(other.crewId !== null) - Number(one.crewId !== null) ||
      (work.get(other.id) ?? 0) - (work.get(one.id) ?? 0) ||
      (one.id < other.id ? -1 : 1),
  )
  for (const area of mostFirst) {
    const able = crews.filter(
      ({ id, skills }) => (area.skill === null || skills.includes(area.skill)) && (area.crewId === null || area.crewId === id),
    )
    const [first, ...others] = able
    if (!first) continue
    const loadOf = ({ id, hours }: Crew) => {
      const all = hours.reduce((sum, own) => sum + own, 0)
      return all > 0 ? ((given.get(id) ?? 0) + (work.get(area.id) ?? 0)) / all : Infinity
    }
    const best = others.reduce((least, crew) => (loadOf(crew) < loadOf(least) ? crew : least), first)
    chosen.set(area.id, best)
    given.set(best.id, (given.get(best.id) ?? 0) + (work.get(area.id) ?? 0))
  }
  return chosen
}
