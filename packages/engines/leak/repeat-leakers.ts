import { type Day, days, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import { type InputProblem, type Outcome, refuse } from '../outcome.ts'
import { gammaBelow } from '../stats/gamma.ts'
import { type MeanCumulativeStep, meanCumulativeFunction } from '../stats/mean-cumulative-function.ts'
import type { WatchedUnit } from '../stats/repeat-events.ts'

/** A curve on paper or screen shows no more. */
const MOST_STEPS = 200

export interface WatchedValve {
  readonly id: string
  readonly watchedFrom: Instant
  readonly watchedTo: Instant
  /** In any order; several on one day are several. */
  readonly openedAt: readonly Instant[]
}

export interface RepeatLeaker {
  readonly id: string
  readonly leaks: number
  /** Mean number of leaks of a valve watched as long. */
  readonly expected: number
  /** Upper limit of that mean. */
  readonly upper: number
  /** Chance of so many leaks or more, did it leak as valves do on average. */
  readonly chance: number
  /** Days of watch that were counted: less than all where at its end too few valves are left for a limit. */
  readonly age: Day
}

/**
 * Valves that leak more often than valves watched as long do.
 *
 *     mean = Σ leaks at an age / valves watched then              ages in whole days since watchedFrom
 *     above: leaks of the valve > upper limit of the mean at the end of its own watch
 *     chance = P(N >= leaks) = P(leaks, mean), the incomplete gamma function
 *
 * Limits are those of the mean, on the log scale, which holds wherever the plain one does: no mean of a step is 0. With many
 * valves they lie close to it, and many valves lie above: the chance ranks them, and of so many some are small by luck.
 * A leak or an end on the first day counts as at the age of 1 day. Where no limit is known at the end of a watch, the last age
 * with one is looked at.
 *
 * @source SRC-316 mean cumulative function · SRC-796 chance of a count or more (docs/sources.md)
 * @returns at most 200 steps, first and last among them, and the valves above, least chance first; or a named problem
 * @example repeatLeakers({ valves: [{ id: 'a', watchedFrom: instant(0), watchedTo: instant(86_400_000), openedAt: [instant(0)] }], confidence: 0.95 }).steps[0].mean // → 1
 */
export function repeatLeakers(input: {
  readonly valves: readonly WatchedValve[]
  readonly confidence: number
}): Outcome<{ steps: readonly MeanCumulativeStep[]; above: readonly RepeatLeaker[] }> {
  const { valves, confidence } = input
  const refused = refusedValves(valves)
  if (refused) return refused
  const units = valves.map(unitOf)
  const curve = meanCumulativeFunction({ units, confidence, scale: 'log' })
  if (!curve.ok) return curve.problem.field === 'units' ? { ok: false, problem: { ...curve.problem, field: 'valves' } } : curve
  const { steps } = curve
  const known = lastKnown(steps)
  const above = valves.flatMap(({ id }, index) => aboveItsLimit(id, units[index], steps, known))
  return { ok: true, steps: thinned(steps), above: above.toSorted(byChanceThenId) }
}

function refusedValves(valves: readonly WatchedValve[]): { ok: false; problem: InputProblem } | null {
  for (const { id, watchedFrom, watchedTo, openedAt } of valves) {
    if (!(watchedTo >= watchedFrom && watchedTo - watchedFrom < Infinity))
      return refuse('repeat-events/not-an-age', 'valves', `the watch of ${id} is no span of time`)
    if (!openedAt.every((at) => at >= watchedFrom && at <= watchedTo))
      return refuse('repeat-events/outside-watch', 'valves', `a leak of ${id} lies outside its watch`)
  }
  return null
}

function unitOf({ watchedFrom, watchedTo, openedAt }: WatchedValve): WatchedUnit {
  const ageAt = (at: Instant) => Math.max(1, Math.floor(daysBetween(watchedFrom, at)))
  return { events: openedAt.map(ageAt), watchedTo: ageAt(watchedTo) }
}

type Known = MeanCumulativeStep & { readonly upper: number }

/** For each step itself, or the last before it that has a limit. */
function lastKnown(steps: readonly MeanCumulativeStep[]): (Known | undefined)[] {
  let last: Known | undefined
  return steps.map(({ upper, ...step }) => {
    if (upper !== null) last = { ...step, upper }
    return last
  })
}

function aboveItsLimit(
  id: string,
  unit: WatchedUnit | undefined,
  steps: readonly MeanCumulativeStep[],
  known: readonly (Known | undefined)[],
): RepeatLeaker[] {
  if (!unit || unit.events.length === 0) return []
  const place = firstAfter(steps, unit.watchedTo) - 1
  const step = known[place]
  if (!step) return []
  const age = days(step.age === steps[place]?.age ? unit.watchedTo : step.age)
  const leaks = unit.events.reduce((count, at) => (at <= age ? count + 1 : count), 0)
  if (!(leaks > step.upper)) return []
  return [{ id, leaks, expected: step.mean, upper: step.upper, chance: gammaBelow(leaks, step.mean), age }]
}

/** Place of the first step later than this age. */
function firstAfter(steps: readonly MeanCumulativeStep[], age: number): number {
  let [low, high] = [0, steps.length]
  while (low < high) {
    const middle = (low + high) >> 1
    const step = steps[middle]
    if (step && step.age <= age) low = middle + 1
    else high = middle
  }
  return low
}

function thinned(steps: readonly MeanCumulativeStep[]): readonly MeanCumulativeStep[] {
  if (steps.length <= MOST_STEPS) return steps
  const stride = (steps.length - 1) / (MOST_STEPS - 1)
  return Array.from({ length: MOST_STEPS }, (_, place) => steps[Math.round(place * stride)]).filter((step) => step !== undefined)
}

function byChanceThenId(one: RepeatLeaker, other: RepeatLeaker): number {
  return one.chance - other.chance || (one.id < other.id ? -1 : one.id > other.id ? 1 : 0)
}
