import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { MissedReason } from './events.ts'
import { count, countFromText, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { ValveTag } from './valves.ts'
import { CrewId, WeekOf } from './weeks.ts'

const PlanId = z.uuid()
/** Week of the plan: 0 is its first. */
const week = count('Week', 0, 103)
const hours = quantity({ label: 'Hours', unit: 'h', min: 0, max: 1e9, step: 0.01 })
/** A window may begin before the plan and end after it. */
const anyWeek = count('Week', -10_000, 10_000)
const visits = count('Visits', 0, 10_000_000)

export const planReasons = [
  'in its due week',
  'pinned',
  'frozen',
  'as in the plan before',
  'area closed in its due week',
  'no crew hours in its due week',
  'nothing new in its due week',
  'area opens once',
  'due week is full',
] as const

export const impossibleReasons = [
  'no crew',
  'no crew has the skill',
  'closed all through its window',
  'no crew hours in its window',
  'its window is over',
  'hours run short',
  'pinned week beyond the plan',
  'pinned week is full',
] as const

/** What called for a visit: the rule of the next look, or that a round came back without it. */
export const visitCauses = [
  'after a repack',
  'after a nip',
  'leak interval',
  'reserve',
  'longest time between looks',
  'never seen',
  'overdue',
  'missed on a round',
] as const
export const VisitCause = z.enum(visitCauses)
export type VisitCause = z.infer<typeof VisitCause>

const PlanCost = z.object({
  visitHours: hours,
  setUpHours: hours,
  overtimeHours: hours,
  /** Set-up hours, with full weeks and overtime by their prices. */
  cost: hours,
})

/** All visits of one area in one week by one crew. */
export const PlanBlock = z.object({
  crewId: CrewId,
  areaCode: AreaCode,
  week,
  visits,
  /** Of the visits, without the set-up of the area. */
  hours,
  /** A round of it is made: it moves no more. */
  isFrozen: z.boolean(),
  isPinned: z.boolean(),
  /** How many of its visits may be in each of their weeks: first and last week, visits and hours. */
  windows: z.array(z.object({ earliest: anyWeek, latest: anyWeek, visits, hours })),
})
export type PlanBlock = z.infer<typeof PlanBlock>

export const Impossible = z.object({
  tag: ValveTag,
  areaCode: AreaCode,
  dueWeek: anyWeek,
  cause: VisitCause,
  reason: z.enum(impossibleReasons),
})
export type Impossible = z.infer<typeof Impossible>

/** A plan of rounds as it is drawn: areas and crews by week. */
export const RoundPlan = z.object({
  planId: PlanId,
  startsOn: WeekOf,
  weeks: count('Weeks', 1, 104),
  madeAt: z.iso.datetime(),
  madeBy: z.string(),
  /** Null while it is a draft. */
  takenAt: z.iso.datetime().nullable(),
  takenBy: z.string().nullable(),
  ...PlanCost.shape,
  /** No plan of these visits costs less. */
  bound: hours,
  /** Cost above the bound, as a share of it. */
  gap: quantity({ label: 'Gap to the bound', unit: 'ratio', min: 0, max: 1e6, step: 0.001 }),
  isCutShort: z.boolean(),
  /** The same visits each made in its due week, for comparison. */
  inDueWeeks: PlanCost,
  crews: z.array(z.object({ crewId: CrewId, name: z.string(), hours: z.array(hours) })),
  areas: z.array(z.object({ areaCode: AreaCode, name: z.string(), setUpHours: hours, closedWeeks: z.array(week) })),
  blocks: z.array(PlanBlock),
  impossible: z.array(Impossible),
  impossibleCount: count('Impossible', 0, 10_000_000),
})
export type RoundPlan = z.infer<typeof RoundPlan>

/** The plan in use, the draft beside it, and how far the planning is that runs. */
export const showPlans = endpoint({
  method: 'GET',
  path: '/api/round-plans',
  who: everybody,
  ok: z.object({ taken: RoundPlan.nullable(), draft: RoundPlan.nullable(), isPlanning: z.boolean() }),
  status: 200,
})

/** How far the planning is: looked at often, so it is small. */
export const showPlanning = endpoint({
  method: 'GET',
  path: '/api/round-plans/planning',
  who: everybody,
  ok: z.object({
    /** Share of the work that is done; null while nothing is planned. */
    share: quantity({ label: 'Share done', unit: 'ratio', min: 0, max: 1, step: 0.01 }).nullable(),
    /** What stopped the last planning, in a sentence; null when it came to its end. */
    fault: z.string().nullable(),
  }),
  status: 200,
})

/** Starts planning in the background; the draft is there when it is done. */
export const makePlan = endpoint({
  method: 'POST',
  path: '/api/round-plans',
  who: registerKeepers,
  body: z.strictObject({
    weeks: count('Weeks', 1, 104),
    /** Weeks from now in which nothing new is planned. */
    frozenWeeks: count('Weeks that stay as they are', 0, 26),
    /** The same register and seed give the same plan. */
    seed: count('Seed', 0, 1_000_000),
  }),
  ok: z.object({ isPlanning: z.literal(true) }),
  status: 202,
})

/** Stops the planning that runs; the plan in use stays. */
export const cancelPlanning = endpoint({
  method: 'POST',
  path: '/api/round-plans/cancel',
  who: registerKeepers,
  ok: z.object({ wasPlanning: z.boolean() }),
  status: 200,
})

const byPlan = z.strictObject({ planId: PlanId })

/** From now on this is the plan in use. */
export const takePlan = endpoint({
  method: 'POST',
  path: '/api/round-plans/:planId/take',
  who: registerKeepers,
  params: byPlan,
  ok: z.object({ taken: z.literal(true) }),
  status: 200,
})

/** Throws a draft away. */
export const dropPlan = endpoint({
  method: 'DELETE',
  path: '/api/round-plans/:planId',
  who: registerKeepers,
  params: byPlan,
  ok: z.object({ dropped: z.literal(true) }),
  status: 200,
})

/** Visits of an area that are in another week in the draft than in the plan in use. */
export const PlanMove = z.object({
  areaCode: AreaCode,
  /** Monday; null where it was, or is, in no week. */
  from: WeekOf.nullable(),
  to: WeekOf.nullable(),
  visits: count('Visits', 1, 1_000_000),
  tags: z.array(ValveTag).max(5),
  reason: z.string(),
})
export type PlanMove = z.infer<typeof PlanMove>

/** What the draft moves, the most visits first. */
export const showMoves = endpoint({
  method: 'GET',
  path: '/api/round-plans/:planId/moves',
  who: everybody,
  params: byPlan,
  ok: z.object({ moves: z.array(PlanMove), same: count('Unmoved', 0, 10_000_000), isFirst: z.boolean() }),
  status: 200,
})

export const PlannedVisit = z.object({
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  crewName: z.string().nullable(),
  /** Mondays; null where the visit is in no week. */
  weekOf: WeekOf.nullable(),
  dueWeekOf: WeekOf,
  earliest: WeekOf,
  latest: WeekOf,
  minutes: quantity({ label: 'Minutes', unit: 'min', min: 0, max: 10_000, step: 1 }),
  cause: VisitCause,
  /** Why a round came back without it; null where nobody said, or it was not missed. */
  missed: MissedReason.nullable(),
  reason: z.enum([...planReasons, ...impossibleReasons]),
  isPinned: z.boolean(),
  pinnedBy: z.string().nullable(),
})
export type PlannedVisit = z.infer<typeof PlannedVisit>

/** Visits of the plan in use: of a block, or of one valve. Of a draft where it is named. */
export const listVisits = endpoint({
  method: 'GET',
  path: '/api/planned-visits',
  who: everybody,
  query: z.strictObject({
    planId: PlanId.optional(),
    week: countFromText('Week', 0, 103).optional(),
    areaCode: AreaCode.optional(),
    crewId: CrewId.optional(),
    tag: ValveTag.optional(),
  }),
  ok: z.object({ visits: z.array(PlannedVisit) }),
  status: 200,
})

/** Moves all visits of an area and crew from one week to another, and pins them there. */
export const moveBlock = endpoint({
  method: 'POST',
  path: '/api/round-plans/:planId/move',
  who: registerKeepers,
  params: byPlan,
  body: z.strictObject({ areaCode: AreaCode, crewId: CrewId, from: week, to: week }),
  ok: z.object({ moved: count('Moved', 0, 1_000_000) }),
  status: 200,
})

/** Pins the visit of a valve that is due nearest to a week to that week, and to a crew if one is named. */
export const pinVisit = endpoint({
  method: 'POST',
  path: '/api/visit-pins',
  who: registerKeepers,
  body: z.strictObject({ tag: ValveTag, weekOf: WeekOf, crewId: CrewId.nullable() }),
  ok: z.object({ pinned: z.literal(true) }),
  status: 201,
})

export const unpinVisit = endpoint({
  method: 'POST',
  path: '/api/visit-pins/remove',
  who: registerKeepers,
  body: z.strictObject({ tag: ValveTag, weekOf: WeekOf }),
  ok: z.object({ removed: z.boolean() }),
  status: 200,
})
