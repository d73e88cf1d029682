import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { TradeHours } from './outages.ts'
import { count, quantity } from './quantity.ts'
import { RepackCost, SlotId } from './repack-plans.ts'
import { chance, reserve, Standing } from './reserve.ts'
import { everybody } from './roles.ts'
import { ValveTag } from './valves.ts'

const expectedLeaks = quantity({ label: 'Leaks before', unit: '', min: 0, max: 1e7, step: 0.01 })

export const repackReasons = [
  'pinned',
  'costs least of all its slots',
  'only an outage isolates it',
  'a cheaper slot is closed to it',
  'a cheaper slot has no hours left',
  'cord or parts come later',
  'waits: repacking now would waste more',
  'no slot has room',
  'no slot is open to it',
  'pin cannot be kept',
] as const
export const RepackReason = z.enum(repackReasons)
export type RepackReason = z.infer<typeof RepackReason>

/** One valve of a plan. Valves of one isolation boundary are always in one slot. */
export const PlannedRepack = z.object({
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  /** Empty: a boundary of its own. */
  boundary: z.string(),
  isolatesOnLine: z.boolean(),
  standing: Standing,
  reserve: reserve.nullable(),
  /** The middle of its forecast. */
  runsOutOn: z.iso.date().nullable(),
  /** Null: it waits. */
  slotId: SlotId.nullable(),
  reason: RepackReason,
  /** The trade or the item that the cheaper slot is short of. */
  blockedBy: z.string().nullable(),
  /** The next best slot, null for waiting; and what it would cost more: below nought where a pin costs more than that. */
  runnerUp: z
    .object({
      slotId: SlotId.nullable(),
      extraCost: quantity({ label: 'Extra cost', unit: '', min: -1e12, max: 1e12, step: 0.01 }),
    })
    .nullable(),
  chanceOut: chance,
  expectedLeaks,
  cost: RepackCost,
  /** In a what-if: with the slot of the plan it is based on. */
  ifKept: z.object({ slotId: SlotId.nullable(), chanceOut: chance, expectedLeaks }).nullable(),
  hours: TradeHours,
  pin: z.object({ kind: z.enum(['in', 'not in']), slotId: SlotId, by: z.string() }).nullable(),
  /** Packing it takes, in words; null where its gland is not measured or its packing not known. */
  needs: z.string().nullable(),
})
export type PlannedRepack = z.infer<typeof PlannedRepack>

/** Valves of a plan, those that cost most first: of a slot, of an area, or one. */
export const listPlannedRepacks = endpoint({
  method: 'GET',
  path: '/api/repack-plans/:planId/repacks',
  who: everybody,
  params: z.strictObject({ planId: z.uuid() }),
  query: z.strictObject({
    /** `none` for those that wait. */
    slotId: z.union([SlotId, z.literal('none')]).optional(),
    areaCode: AreaCode.optional(),
    tag: ValveTag.optional(),
    skip: z
      .string()
      .regex(/^\d{1,7}$/)
      .transform(Number)
      .pipe(count('Skipped', 0, 9_999_999))
      .optional(),
  }),
  ok: z.object({ repacks: z.array(PlannedRepack), total: count('Total', 0, 10_000_000) }),
  status: 200,
})
