import { type Outcome, refuse } from '../../outcome.ts'

/** Weeks are counted 0, 1, 2 … from the first week of the plan; work and hours are hours of a crew. */
export interface RoundPlanInput {
  readonly weeks: number
  readonly crews: readonly Crew[]
  readonly areas: readonly PlanArea[]
  readonly visits: readonly DueVisit[]
  readonly rules: PlanRules
  /** Starts the search; the same input and seed give the same plan. */
  readonly seed: number
}

export interface Crew {
  readonly id: string
  /** Hours for walking in each week; 0 where the crew is away. */
  readonly hours: readonly number[]
  readonly skills: readonly string[]
}

export interface PlanArea {
  readonly id: string
  /** Hours it takes to open the area in a week: permits, tools, the way there. */
  readonly setUpHours: number
  readonly closedWeeks: readonly number[]
  /** What a crew must know to walk here; null asks for nothing. */
  readonly skill: string | null
  /** The crew that walks here; null leaves the choice to the plan. */
  readonly crewId: string | null
}

export interface DueVisit {
  readonly id: string
  readonly areaId: string
  readonly due: number
  /** First and last week it may be made in. */
  readonly earliest: number
  readonly latest: number
  readonly hours: number
  /** The more it matters, the later it is left out when hours run short. */
  readonly weight: number
  /** Where it was in the plan before: it stays there unless something is won. */
  readonly before: number | null
  /** Set by hand. A week that was set holds even outside the window. */
  readonly pin: { readonly week: number | null; readonly crewId: string | null } | null
  /** Its round is made: week and crew stay. */
  readonly frozen: { readonly week: number; readonly crewId: string } | null
}

export interface PlanRules {
  /** Weeks from the start in which nothing new is planned. */
  readonly frozenWeeks: number
  /** Share of a crew's hours up to which a week costs nothing more. */
  readonly easyShare: number
  /** What an hour above that share costs, against an hour of set-up. */
  readonly fullWeekPrice: number
  readonly overtimePrice: number
  /** No week goes beyond this share of the crew's hours. */
  readonly mostShare: number
  /** What it costs to move an hour of visits out of the week the plan before had. */
  readonly movePrice: number
}

/** Levelling prices of the round plan, set by us. */
export const usualPlanRules: PlanRules = {
  frozenWeeks: 0,
  easyShare: 0.85,
  fullWeekPrice: 0.2,
  overtimePrice: 3,
  mostShare: 1.2,
  movePrice: 0.2,
}

/** The first fault of an input, by name; null when there is none. */
export function faultOfInput(input: RoundPlanInput): (Outcome<object> & { ok: false }) | null {
  const { weeks, crews, areas, visits, rules } = input
  if (!Number.isInteger(weeks) || weeks < 1 || weeks > MOST_WEEKS)
    return refuse('plan/weeks', 'weeks', `a plan has 1 to ${MOST_WEEKS} weeks, not ${weeks}`)
  for (const crew of crews) {
    if (crew.hours.length !== weeks || !crew.hours.every(isAmount))
      return refuse('plan/crew-hours', crew.id, 'a crew has hours for each week, none below 0')
  }
  for (const { id, setUpHours } of areas)
    if (!isAmount(setUpHours)) return refuse('plan/set-up', id, `the set-up of an area takes 0 hours or more, not ${setUpHours}`)
  const known = new Set(areas.map(({ id }) => id))
  for (const visit of visits) {
    if (!known.has(visit.areaId)) return refuse('plan/area-unknown', visit.id, `no area is called ${visit.areaId}`)
    if (!isAmount(visit.hours) || !isAmount(visit.weight))
      return refuse('plan/visit-hours', visit.id, 'hours and weight of a visit are 0 or more')
    if (![visit.due, visit.earliest, visit.latest].every(Number.isInteger) || visit.earliest > visit.latest)
      return refuse('plan/window', visit.id, `weeks ${visit.earliest} to ${visit.latest} are no window`)
  }
  const prices = [rules.easyShare, rules.fullWeekPrice, rules.overtimePrice, rules.movePrice]
  if (!prices.every(isAmount) || !(rules.mostShare > 0) || rules.easyShare > 1)
    return refuse('plan/rules', 'rules', 'shares and prices are 0 or more, and the easy share at most 1')
  return null
}

const MOST_WEEKS = 520
const isAmount = (value: number) => value >= 0 && value < Infinity
