import type { Impossible } from '@glandkeeper/contract/round-plans'

/** Visits that are in no week for one reason in one area, the soonest due first; the largest group first. */
export function impossibleGroups(impossible: readonly Impossible[]) {
  const groups = new Map<string, { areaCode: string; reason: Impossible['reason']; visits: Impossible[] }>()
  for (const visit of impossible) {
    const { areaCode, reason } = visit
    const key = `${areaCode} ${reason}`
    const group = groups.get(key) ?? { areaCode, reason, visits: [] }
    group.visits.push(visit)
    groups.set(key, group)
  }
  for (const { visits } of groups.values()) visits.sort((one, other) => one.dueWeek - other.dueWeek)
  return [...groups.values()].toSorted((one, other) => other.visits.length - one.visits.length)
}
