import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { SlotId } from './repack-plans.ts'
import { registerKeepers } from './roles.ts'
import { ValveTag } from './valves.ts'

/** Puts a valve, and all of its boundary, into another slot, and pins it there. Refused where it cannot be. */
export const moveRepack = endpoint({
  method: 'POST',
  path: '/api/repack-plans/:planId/move',
  who: registerKeepers,
  params: z.strictObject({ planId: z.uuid() }),
  body: z.strictObject({ tag: ValveTag, slotId: SlotId.nullable() }),
  ok: z.object({ moved: z.array(ValveTag) }),
  status: 200,
})

/** A planner's word for every plan to come: in this slot, or not in it. */
export const pinRepack = endpoint({
  method: 'POST',
  path: '/api/repack-pins',
  who: registerKeepers,
  body: z.strictObject({ tag: ValveTag, slotId: SlotId, kind: z.enum(['in', 'not in']) }),
  ok: z.object({ pinned: z.literal(true) }),
  status: 201,
})

export const unpinRepack = endpoint({
  method: 'POST',
  path: '/api/repack-pins/remove',
  who: registerKeepers,
  body: z.strictObject({ tag: ValveTag, slotId: SlotId }),
  ok: z.object({ removed: z.boolean() }),
  status: 200,
})
