import type { Beat } from './beats.ts'
import type { CrewLoad } from './load.ts'
import type { Placed } from './whole-visits.ts'

/** Why a visit is in its week. */
export type PlanReason =
  | 'in its due week'
  | 'pinned'
  | 'frozen'
  | 'as in the plan before'
  | 'area closed in its due week'
  | 'no crew hours in its due week'
  | 'nothing new in its due week'
  | 'area opens once'
  | 'due week is full'

/** Says of a placed visit why it is where it is, by what stands against its due week. */
export function reasonOf({ visit, week, beat }: Placed, beats: readonly Beat[], load: CrewLoad, frozenWeeks: number): PlanReason {
  if (visit.frozen) return 'frozen'
  if (visit.pin && visit.pin.week !== null) return 'pinned'
  const { area, crew } = beats[beat] as Beat
  const due = Math.max(0, visit.due)
  if (week === due) return 'in its due week'
  if (due < frozenWeeks) return 'nothing new in its due week'
  if (area.closedWeeks.includes(due)) return 'area closed in its due week'
  if (due < crew.hours.length && !((crew.hours[due] ?? 0) > 0)) return 'no crew hours in its due week'
  if (visit.before === week) return 'as in the plan before'
  return load.visitsOf(beat, due) === 0 ? 'area opens once' : 'due week is full'
}
