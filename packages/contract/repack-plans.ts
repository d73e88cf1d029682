import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { OutageId, OutageInput, TradeHours } from './outages.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

const PlanId = z.uuid()
/** `outage:` and its id, or `fortnight:` and the Monday it begins on. */
export const SlotId = z.string().regex(/^(outage:[0-9a-f-]{36}|fortnight:\d{4}-\d\d-\d\d)$/, 'no slot is named like this')

const many = (label: string) => count(label, 0, 10_000_000)
const chance = quantity({ label: 'Chance', unit: 'ratio', min: 0, max: 1, step: 0.001 })
const expected = (label: string) => quantity({ label, unit: '', min: 0, max: 1e7, step: 0.01 })
const cost = (label: string) => quantity({ label, unit: '', min: 0, max: 1e12, step: 0.01 })

/** What a plan makes least: weighted chance of running out, or money by the prices of the site. */
export const objectives = ['chance', 'money'] as const
export const Objective = z.enum(objectives)
export type Objective = z.infer<typeof Objective>

/** What a placement costs, by kind, in points or in the money of the site. */
export const RepackCost = z.object({
  running: cost('Running out before'),
  leaks: cost('Leaks before'),
  waste: cost('Packing thrown away early'),
  total: cost('Cost'),
})
export type RepackCost = z.infer<typeof RepackCost>

/** A window in which valves can be repacked. */
export const RepackSlot = z.object({
  slotId: SlotId,
  kind: z.enum(['outage', 'fortnight']),
  name: z.string(),
  earliestOn: z.iso.date(),
  likelyOn: z.iso.date(),
  latestOn: z.iso.date(),
  lastOn: z.iso.date(),
  areaCodes: z.array(AreaCode),
  hours: TradeHours,
  used: TradeHours,
  repacks: many('Repacks'),
})
export type RepackSlot = z.infer<typeof RepackSlot>

/** What would change against the register, in a question of what if. */
export const WhatIf = z.strictObject({
  slips: z.array(z.strictObject({ outageId: OutageId, weeks: count('Weeks', -52, 104) })).max(20),
  /** Share of the hours of every slot that is there. */
  hoursShare: quantity({ label: 'Share of the hours', unit: 'ratio', min: 0, max: 3, step: 0.05 }),
  /** Days by which everything on order, and everything that could be ordered, comes later. */
  cordLateDays: count('Days late', 0, 730),
  oneMoreOutage: OutageInput.nullable(),
})
export type WhatIf = z.infer<typeof WhatIf>

const PlanTotals = z.object({
  valves: many('Valves'),
  repacks: many('Repacks'),
  waits: many('Waits'),
  /** Valves that are to be expected to run out before their repack, and leaks before it. */
  expectedOut: expected('Run out before'),
  expectedLeaks: expected('Leaks before'),
  cost: RepackCost,
})
export type PlanTotals = z.infer<typeof PlanTotals>

const planHead = {
  planId: PlanId,
  name: text(80, 1),
  madeAt: z.iso.datetime(),
  madeBy: z.string(),
  takenAt: z.iso.datetime().nullable(),
  takenBy: z.string().nullable(),
  /** Taken, and no other taken since. */
  isInUse: z.boolean(),
  objective: Objective,
  startsOn: z.iso.date(),
  weeks: count('Weeks', 4, 260),
  whatIf: WhatIf.nullable(),
  /** The plan it was compared with when it was made. */
  basedOn: PlanId.nullable(),
  totals: PlanTotals,
  /** No plan costs less. */
  bound: cost('Bound'),
  gap: quantity({ label: 'Gap to the bound', unit: 'ratio', min: 0, max: 1e6, step: 0.0001 }),
  isCutShort: z.boolean(),
}
/** A plan in a list. */
export const RepackPlanHead = z.object(planHead)
export type RepackPlanHead = z.infer<typeof RepackPlanHead>

export const RepackPlan = z.object({
  ...planHead,
  /** What the same valves cost when each in turn takes the best slot left. */
  greedyCost: cost('Cost one after the other'),
  slots: z.array(RepackSlot),
  infeasiblePins: z.array(z.object({ tags: z.array(ValveTag), slotId: SlotId, why: z.string() })),
  /** Of each item that is nearly used up before more can come: what slots before that day may use together, and use. */
  stock: z.array(
    z.object({
      itemId: z.uuid(),
      name: z.string(),
      unit: z.enum(['m', 'pc']),
      before: z.iso.date(),
      amount: quantity({ label: 'Amount', unit: '', min: 0, max: 1e9, step: 0.01 }),
      used: quantity({ label: 'Used', unit: '', min: 0, max: 1e9, step: 0.01 }),
    }),
  ),
  /** Of a what-if: the plan it is based on, kept as it is under what changed. */
  ifKept: z.object({ totals: PlanTotals, overHours: z.array(SlotId), short: z.array(z.string()) }).nullable(),
})
export type RepackPlan = z.infer<typeof RepackPlan>

/** Every plan that is kept, the newest first; the one in use; how far the planning is that runs. */
export const listRepackPlans = endpoint({
  method: 'GET',
  path: '/api/repack-plans',
  who: everybody,
  ok: z.object({ plans: z.array(RepackPlanHead) }),
  status: 200,
})

export const showRepackPlanning = endpoint({
  method: 'GET',
  path: '/api/repack-plans/planning',
  who: everybody,
  ok: z.object({
    /** Null while nothing is planned. */
    share: quantity({ label: 'Share done', unit: 'ratio', min: 0, max: 1, step: 0.01 }).nullable(),
    fault: z.string().nullable(),
    /** The last plan that was made since the server began; null before. */
    planId: PlanId.nullable(),
  }),
  status: 200,
})

/** Starts planning in the background. With `whatIf` it answers a question, and the plan cannot be taken. */
export const makeRepackPlan = endpoint({
  method: 'POST',
  path: '/api/repack-plans',
  who: registerKeepers,
  body: z.strictObject({
    name: text(80, 1),
    weeks: count('Weeks', 4, 260),
    objective: Objective,
    whatIf: WhatIf.nullable(),
    /** The plan a what-if is held against; null takes the one in use. */
    basedOn: PlanId.nullable(),
  }),
  ok: z.object({ isPlanning: z.literal(true) }),
  status: 202,
})

export const cancelRepackPlanning = endpoint({
  method: 'POST',
  path: '/api/repack-plans/cancel',
  who: registerKeepers,
  ok: z.object({ wasPlanning: z.boolean() }),
  status: 200,
})

const byPlan = z.strictObject({ planId: PlanId })

export const showRepackPlan = endpoint({
  method: 'GET',
  path: '/api/repack-plans/:planId',
  who: everybody,
  params: byPlan,
  ok: RepackPlan,
  status: 200,
})

export const takeRepackPlan = endpoint({
  method: 'POST',
  path: '/api/repack-plans/:planId/take',
  who: registerKeepers,
  params: byPlan,
  ok: z.object({ taken: z.literal(true) }),
  status: 200,
})

/** Throws a plan away that nobody has taken. */
export const dropRepackPlan = endpoint({
  method: 'DELETE',
  path: '/api/repack-plans/:planId',
  who: registerKeepers,
  params: byPlan,
  ok: z.object({ dropped: z.literal(true) }),
  status: 200,
})

/** One valve that two plans say different things of. */
export const RepackDifference = z.object({
  tag: ValveTag,
  areaCode: AreaCode,
  one: z.object({ slotId: SlotId.nullable(), chanceOut: chance }).nullable(),
  other: z.object({ slotId: SlotId.nullable(), chanceOut: chance }).nullable(),
})
export type RepackDifference = z.infer<typeof RepackDifference>

/** Two plans side by side: their heads, and the valves that are elsewhere, those whose chance grows most first. */
export const compareRepackPlans = endpoint({
  method: 'GET',
  path: '/api/repack-plans/:planId/against/:otherId',
  who: everybody,
  params: z.strictObject({ planId: PlanId, otherId: PlanId }),
  ok: z.object({
    one: RepackPlanHead,
    other: RepackPlanHead,
    same: many('Unmoved'),
    differences: z.array(RepackDifference),
    differenceCount: many('Different'),
  }),
  status: 200,
})
