import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { OutageId } from './outages.ts'
import { count, quantity } from './quantity.ts'
import { everybody } from './roles.ts'
import { amount, ItemId, ItemKind, ItemUnit, LotId } from './stores.ts'
import { ValveTag } from './valves.ts'

const millimetres = (label: string) => quantity({ label, unit: 'mm', min: 0, max: 1e7, step: 0.1 })

/** What to cut from which reel, and in which order, so that least is wasted. */
export const ReelToCut = z.object({
  lotId: LotId,
  label: z.string(),
  batch: z.string(),
  length: millimetres('Length before'),
  pieces: z.array(
    z.object({ tag: ValveTag, length: millimetres('Length'), count: count('Pieces', 1, 100_000), says: z.string() }),
  ),
  left: millimetres('Left'),
  isScrap: z.boolean(),
})

export const KitLine = z.object({
  itemId: ItemId.nullable(),
  name: z.string(),
  kind: ItemKind,
  unit: ItemUnit,
  needed: amount('Needed'),
  onHand: amount('On hand', -1e6),
  issued: amount('Issued'),
  tags: z.array(ValveTag),
  reels: z.array(ReelToCut),
  /** What no reel was long enough for, in words. */
  short: z.array(z.string()),
  waste: z
    .object({
      wasted: millimetres('Wasted'),
      share: quantity({ label: 'Share wasted', unit: 'ratio', min: 0, max: 1, step: 0.001 }),
      /** No cutting wastes less. */
      bound: millimetres('Least waste'),
    })
    .nullable(),
})
export type KitLine = z.infer<typeof KitLine>

/** Everything from the store for some valves. */
export const Kit = z.object({
  title: z.string(),
  valves: count('Valves', 0, 100_000),
  lines: z.array(KitLine),
  open: z.array(z.object({ says: z.string(), tags: z.array(ValveTag) })),
})
export type Kit = z.infer<typeof Kit>

/** The kit of a valve, of an outage of the plan in use, or of the likely repacks of a round. */
export const showKit = endpoint({
  method: 'GET',
  path: '/api/kit',
  who: everybody,
  query: z
    .strictObject({ tag: ValveTag.optional(), outageId: OutageId.optional(), roundId: z.uuid().optional() })
    .refine((query) => Object.values(query).filter((value) => value !== undefined).length === 1, {
      error: 'name a valve, an outage or a round',
    }),
  ok: Kit,
  status: 200,
})
