import { type InputProblem, refuse } from '../outcome.ts'

/** One unit watched from its age 0, and the ages at which something happened to it; several at one age are several. */
export interface WatchedUnit {
  readonly events: readonly number[]
  /** Age at which the watch ended. */
  readonly watchedTo: number
}

/** @example refusedUnits([{ events: [5], watchedTo: 4 }])?.problem.code // → 'repeat-events/outside-watch' */
export function refusedUnits(units: readonly WatchedUnit[]): { ok: false; problem: InputProblem } | null {
  if (units.length === 0) return refuse('repeat-events/no-unit', 'units', 'there is no unit to count')
  for (const { events, watchedTo } of units) {
    if (!(watchedTo > 0 && watchedTo < Infinity))
      return refuse('repeat-events/not-an-age', 'units', `a unit is watched to an age above 0, not ${watchedTo}`)
    const outside = events.find((age) => !(age > 0 && age <= watchedTo))
    if (outside !== undefined)
      return refuse(
        'repeat-events/outside-watch',
        'units',
        `an event at ${outside} lies outside the watch from 0 to ${watchedTo}`,
      )
  }
  return null
}
