import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { PackingFamily, ringSection } from './events.ts'
import { StudThread } from './glands.ts'
import { OutageId } from './outages.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

export const ItemId = z.uuid()
export const LotId = z.uuid()

/** What a store keeps for glands. Cord is counted in metres, all else in pieces. */
export const itemKinds = ['cord', 'die-formed ring', 'stud', 'nut', 'spacer'] as const
export const ItemKind = z.enum(itemKinds)
export type ItemKind = z.infer<typeof ItemKind>
export const ItemUnit = z.enum(['m', 'pc'])

/** Metres of a cord, or pieces of anything else. */
export const amount = (label: string, min = 0) => quantity({ label, unit: '', min, max: 1e6, step: 0.01, usual: [min, 10_000] })
const size = (label: string, max: number) => quantity({ label, unit: 'mm', min: 0.5, max, step: 0.1 })

const itemFields = {
  kind: ItemKind,
  name: text(80, 1),
  /** Of cord and die-formed rings. */
  family: PackingFamily.nullable(),
  /** Of cord. */
  section: ringSection.nullable(),
  /** Of die-formed rings and spacers. */
  boxBore: size('Bore', 600).nullable(),
  stemDiameter: size('Stem', 500).nullable(),
  /** Of studs and nuts. */
  thread: StudThread.nullable(),
  /** Of studs and spacers. */
  length: size('Length', 1000).nullable(),
  leadTimeDays: count('Lead time in days', 0, 730, [1, 200]),
  /** Below this somebody is told to order. */
  leastStock: amount('Least stock'),
  /** What is sold at once: metres on a reel, pieces in a box. */
  packSize: quantity({ label: 'Sold in', unit: '', min: 0.01, max: 100_000, step: 0.01, usual: [0.1, 1000] }),
}

const needs: Readonly<Record<ItemKind, readonly (keyof typeof itemFields)[]>> = {
  cord: ['family', 'section'],
  'die-formed ring': ['family', 'boxBore', 'stemDiameter'],
  stud: ['thread', 'length'],
  nut: ['thread'],
  spacer: ['boxBore', 'stemDiameter', 'length'],
}

export const StockItemInput = z.strictObject(itemFields).superRefine((item, context) => {
  for (const field of needs[item.kind])
    if (item[field] === null) context.addIssue({ code: 'custom', path: [field], message: `a ${item.kind} has one` })
})
export type StockItemInput = z.infer<typeof StockItemInput>

/** A reel, or a box: what came at once of one batch. */
export const StockLot = z.object({
  lotId: LotId,
  /** What is written on it. */
  label: z.string(),
  batch: z.string(),
  amount: amount('Left', -1e6),
  expiresOn: z.iso.date().nullable(),
  isExpired: z.boolean(),
})
export type StockLot = z.infer<typeof StockLot>

export const StockItem = z.object({
  itemId: ItemId,
  ...itemFields,
  unit: ItemUnit,
  revision: count('Revision', 1, 1_000_000),
  /** Of lots that are not expired; below nought where more was used than anybody put down: count it. */
  onHand: amount('On hand', -1e6),
  lots: z.array(StockLot),
  onOrder: z.array(z.object({ orderId: z.uuid(), amount: amount('Ordered'), expectedOn: z.iso.date() })),
})
export type StockItem = z.infer<typeof StockItem>

export const listStock = endpoint({
  method: 'GET',
  path: '/api/stock',
  who: everybody,
  ok: z.object({ items: z.array(StockItem) }),
  status: 200,
})

export const addStockItem = endpoint({
  method: 'POST',
  path: '/api/stock',
  who: registerKeepers,
  body: StockItemInput,
  ok: StockItem,
  status: 201,
})

const byItem = z.strictObject({ itemId: ItemId })

export const changeStockItem = endpoint({
  method: 'PUT',
  path: '/api/stock/:itemId',
  who: registerKeepers,
  params: byItem,
  body: z.strictObject({ revision: count('Revision', 1, 1_000_000), item: StockItemInput }),
  ok: StockItem,
  status: 200,
})

const movement = {
  /** Made where it is typed in, so that one sent twice is one. */
  movementId: z.uuid(),
  itemId: ItemId,
  takenAt: z.iso.datetime({ offset: true }),
  note: text(200),
}
const printed = text(40, 1)

/** What happened to stock, in the past tense: never changed; a correction takes one back. */
export const StockMovement = z.discriminatedUnion('kind', [
  z.strictObject({ ...movement, kind: z.literal('ordered'), amount: amount('Ordered', 0.01), expectedOn: z.iso.date() }),
  z.strictObject({
    ...movement,
    kind: z.literal('received'),
    /** The lot it makes. */
    lotId: LotId,
    label: printed,
    batch: printed,
    amount: amount('Received', 0.01),
    expiresOn: z.iso.date().nullable(),
    /** The order it came of, which is then no more awaited. */
    orderId: z.uuid().nullable(),
  }),
  z.strictObject({
    ...movement,
    kind: z.literal('issued'),
    lotId: LotId,
    amount: amount('Issued', 0.01),
    /** Whom it is for: a valve or an outage, where it is known. */
    tag: ValveTag.nullable(),
    outageId: OutageId.nullable(),
  }),
  z.strictObject({ ...movement, kind: z.literal('returned'), lotId: LotId, amount: amount('Returned', 0.01) }),
  /** What is really there: the books follow it. */
  z.strictObject({ ...movement, kind: z.literal('counted'), lotId: LotId, amount: amount('Counted') }),
  z.strictObject({ ...movement, kind: z.literal('taken back'), corrects: z.uuid() }),
])
export type StockMovement = z.infer<typeof StockMovement>

/** Puts down what happened. The same movement sent twice is one; the same id with other words is refused. */
export const moveStock = endpoint({
  method: 'POST',
  path: '/api/stock-movements',
  who: everybody,
  body: z.strictObject({ movements: z.array(StockMovement).min(1).max(100) }),
  ok: z.object({ items: z.array(StockItem) }),
  status: 200,
})

export const StockMovementShown = z.object({
  movementId: z.uuid(),
  kind: z.enum(['ordered', 'received', 'issued', 'returned', 'counted', 'taken back', 'used']),
  takenAt: z.iso.datetime(),
  receivedAt: z.iso.datetime(),
  by: z.string(),
  label: z.string(),
  /** What it adds to the stock, or takes from it. */
  change: amount('Change', -1e6),
  says: z.string(),
  isTakenBack: z.boolean(),
})
export type StockMovementShown = z.infer<typeof StockMovementShown>

/** The last thousand movements of an item, the newest first. */
export const listStockMovements = endpoint({
  method: 'GET',
  path: '/api/stock/:itemId/movements',
  who: everybody,
  params: byItem,
  ok: z.object({ movements: z.array(StockMovementShown) }),
  status: 200,
})

const changedOn = z.object({ on: z.iso.date(), balance: amount('Balance', -1e6), says: z.string() })

/** What the plan in use takes of an item over time, and when to order. */
export const StockOutlook = z.object({
  itemId: ItemId,
  demand: amount('Demand'),
  /** The balance after each change, in order of time. */
  balances: z.array(changedOn),
  /** First day with less than the least stock, and first day without; null while there is enough. */
  belowLeastOn: z.iso.date().nullable(),
  shortOn: z.iso.date().nullable(),
  shortBy: amount('Short by'),
  orderBy: z.iso.date().nullable(),
  /** The day to order by is over. */
  isLate: z.boolean(),
  orderAmount: amount('To order'),
  expires: z.array(z.object({ on: z.iso.date(), amount: amount('Expires') })),
})
export type StockOutlook = z.infer<typeof StockOutlook>

export const showStockOutlook = endpoint({
  method: 'GET',
  path: '/api/stock-outlook',
  who: everybody,
  ok: z.object({
    items: z.array(StockOutlook),
    /** Packing the plan needs and the store has no item for, with the valves that need it. */
    unknown: z.array(z.object({ needs: z.string(), tags: z.array(ValveTag) })),
    /** Valves of the plan whose packing cannot be worked out, by what is not known. */
    open: z.array(z.object({ says: z.string(), tags: z.array(ValveTag) })),
    until: z.iso.date(),
  }),
  status: 200,
})
