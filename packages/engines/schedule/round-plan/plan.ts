import { type Outcome } from '../../outcome.ts'
import { type Beat, beatsOf, type Impossible } from './beats.ts'
import { lowerBound } from './bound.ts'
import { crewsOfAreas } from './crew-of-area.ts'
import { searchCrewPlan, type SearchWatch } from './crew-plan.ts'
import { type Crew, faultOfInput, type RoundPlanInput } from './input.ts'
import { CrewLoad } from './load.ts'
import { nearerDue } from './nearer-due.ts'
import { type PlanReason, reasonOf } from './reason.ts'
import { costOfWeek } from './week-cost.ts'
import { type Placed, wholeVisits } from './whole-visits.ts'
import { withinLimit } from './within-limit.ts'

export interface PlannedVisit {
  readonly visitId: string
  readonly crewId: string
  readonly week: number
  readonly reason: PlanReason
}

export interface CrewWeeks {
  readonly crewId: string
  /** By week. */
  readonly visitHours: readonly number[]
  readonly setUpHours: readonly number[]
}

/** What a year of rounds takes. */
export interface PlanCost {
  readonly visitHours: number
  readonly setUpHours: number
  readonly overtimeHours: number
  /** Set-up hours with full weeks and overtime by their prices: what the search makes least. */
  readonly cost: number
}

export interface RoundPlan extends PlanCost {
  readonly visits: readonly PlannedVisit[]
  /** Every visit that is in no week, with the reason. */
  readonly impossible: readonly Impossible[]
  readonly crewWeeks: readonly CrewWeeks[]
  /** No plan of these visits costs less. */
  readonly bound: number
  /** Cost above the bound, as a share of the bound. */
  readonly gap: number
  /** The same visits each made in its due week, for comparison. */
  readonly inDueWeeks: PlanCost
  /** The search was told to stop before it had come to its end. */
  readonly isCutShort: boolean
}

/**
 * Plans visits over weeks: every visit once within its window, areas opened seldom, crews' hours level.
 *
 *     cost = set-up of each area and week it is open in + price × hours in full weeks + price × overtime
 *
 * Areas are given to crews, the open weeks of each area chosen by dynamic programming and improved by local search
 * against all others, and the hours then cut into whole visits. What cannot be is listed with its reason.
 *
 * @source SRC-732 planning of rounds (docs/sources.md)
 * @returns the plan, or `plan/weeks`, `plan/crew-hours`, `plan/set-up`, `plan/area-unknown`, `plan/visit-hours`, `plan/window`, `plan/rules`
 * @example planRounds({ weeks: 2, crews: [{ id: 'A', hours: [40, 40], skills: [] }], areas: [{ id: 'BH', setUpHours: 1, closedWeeks: [0], skill: null, crewId: null }], visits: [{ id: 'v', areaId: 'BH', due: 0, earliest: 0, latest: 1, hours: 0.2, weight: 1, before: null, pin: null, frozen: null }], rules: { frozenWeeks: 0, easyShare: 0.85, fullWeekPrice: 0.2, overtimePrice: 3, mostShare: 1.2, movePrice: 0.2 }, seed: 1 }).visits[0].week // → 1
 */
export function planRounds(input: RoundPlanInput, watch: SearchWatch = {}): Outcome<RoundPlan> {
  const fault = faultOfInput(input)
  if (fault) return fault
  const { beats, impossible } = beatsOf(input, crewsOfAreas(input))
  let isCutShort = false
  const shouldStop = () => {
    isCutShort ||= watch.shouldStop?.() === true
    return isCutShort
  }
  const parts = input.crews.map((crew, index) => {
    const share = (done: number) => watch.onProgress?.((index + done) / input.crews.length)
    return planCrew(
      input,
      crew,
      beats.filter((beat) => beat.crew === crew),
      { shouldStop, onProgress: share },
    )
  })
  const sum = (of: (part: CrewPart) => number) => parts.reduce((total, part) => total + of(part), 0)
  const due = sumOf(parts.map(({ inDueWeeks }) => inDueWeeks))
  const cost = sumOf(parts.map(({ taken }) => taken))
  const bound = sum((part) => part.bound)
  return {
    ok: true,
    visits: parts.flatMap(({ visits }) => visits),
    impossible: [...impossible, ...parts.flatMap((part) => part.impossible)],
    crewWeeks: parts.map(({ weeks }) => weeks),
    ...cost,
    bound,
    gap: bound > 0 ? Math.max(0, cost.cost / bound - 1) : 0,
    inDueWeeks: due,
    isCutShort,
  }
}

interface CrewPart {
  readonly visits: readonly PlannedVisit[]
  readonly impossible: readonly Impossible[]
  readonly weeks: CrewWeeks
  readonly taken: PlanCost
  readonly bound: number
  readonly inDueWeeks: PlanCost
}

function planCrew({ weeks, rules, seed }: RoundPlanInput, crew: Crew, beats: readonly Beat[], watch: SearchWatch): CrewPart {
  const search = searchCrewPlan(beats, crew.hours, rules, seed, watch)
  const spread = nearerDue(beats, wholeVisits(beats, search), crew.hours, rules.easyShare)
  const { placed, impossible } = withinLimit(beats, spread, crew.hours, rules.mostShare)
  const load = new CrewLoad(beats, weeks, placed)
  const taken = costOf(load, crew, rules)
  return {
    visits: placed.map((visit) => ({
      visitId: visit.visit.id,
      crewId: crew.id,
      week: visit.week,
      reason: reasonOf(visit, beats, load, rules.frozenWeeks),
    })),
    impossible,
    weeks: { crewId: crew.id, visitHours: [...load.visitHours], setUpHours: [...load.setUpHours] },
    taken,
    bound: lowerBound(without(impossible, beats), crew.hours, rules, taken.visitHours),
    inDueWeeks: costOf(new CrewLoad(beats, weeks, placed.map(inDueWeek(weeks))), crew, rules),
  }
}

const inDueWeek =
  (weeks: number) =>
  (placed: Placed): Placed => ({ ...placed, week: Math.min(weeks - 1, Math.max(0, placed.visit.due)) })

function without(impossible: readonly Impossible[], beats: readonly Beat[]): readonly Beat[] {
  if (impossible.length === 0) return beats
  const left = new Set(impossible.map(({ visitId }) => visitId))
  return beats.map((beat) => ({
    ...beat,
    classes: beat.classes.filter(({ visits }) => visits.some(({ id }) => !left.has(id))),
    isFixedOpen: fixedOpenWithout(left, beat),
  }))
}

function fixedOpenWithout(left: ReadonlySet<string>, { fixed, isFixedOpen }: Beat): Uint8Array {
  const open = new Uint8Array(isFixedOpen.length)
  for (const { visit, week } of fixed) if (!left.has(visit.id)) open[week] = 1
  return open
}

function costOf(load: CrewLoad, { hours }: Crew, rules: RoundPlanInput['rules']): PlanCost {
  const sum = (values: Iterable<number>) => Array.from(values).reduce((total, value) => total + value, 0)
  const setUpHours = sum(load.setUpHours)
  return {
    visitHours: sum(load.visitHours),
    setUpHours,
    overtimeHours: sum(hours.map((own, week) => Math.max(0, load.of(week) - own))),
    cost: setUpHours + sum(hours.map((own, week) => costOfWeek(load.of(week), own, rules))),
  }
}

function sumOf(costs: readonly PlanCost[]): PlanCost {
  const sum = (of: (cost: PlanCost) => number) => costs.reduce((total, cost) => total + of(cost), 0)
  return {
    visitHours: sum((cost) => cost.visitHours),
    setUpHours: sum((cost) => cost.setUpHours),
    overtimeHours: sum((cost) => cost.overtimeHours),
    cost: sum(({ cost }) => cost),
  }
}
