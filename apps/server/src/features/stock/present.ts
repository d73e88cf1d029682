import type { StockItem, StockItemInput, StockLot } from '@glandkeeper/contract/stores'
import type { StockItemModel, StockLotModel } from '../../generated/sqlite/models.ts'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { type Moved, type StockAsMoved, stockAsMoved, withoutDust } from './stock-as-moved.ts'

type ReadStock = Pick<Read, 'site' | 'stockItem'>

/** As little of a movement as the fold needs: a store that is years old has a hundred thousand. */
export const asMoved = {
  id: true,
  kind: true,
  lotId: true,
  amount: true,
  takenAt: true,
  receivedAt: true,
  corrects: true,
  expectedOn: true,
} as const

/** Every item of the store with its lots and open orders, or those named; by kind, then name. */
export async function stockOf(read: ReadStock, siteId: string, now: Date, itemIds?: readonly string[]): Promise<StockItem[]> {
  const items = await read.stockItem.findMany({
    where: { siteId, ...(itemIds && { id: { in: [...itemIds] } }) },
    orderBy: [{ kind: 'asc' }, { name: 'asc' }, { id: 'asc' }],
    include: { lots: { orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] }, movements: { select: asMoved } },
  })
  const today = await todayOf(read, siteId, now)
  return items.map((item) => presentItem(item, today))
}

/** The day it is at the site. */
export async function todayOf(read: Pick<Read, 'site'>, siteId: string, now: Date): Promise<string> {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  return dayAt(now, timeZone)
}

/** Only what a person may change of it. Words were checked by the contract when they were written. */
export function presentInput(row: StockItemModel): StockItemInput {
  return {
    kind: row.kind as StockItemInput['kind'],
    name: row.name,
    family: row.family,
    section: row.sectionMm as StockItemInput['section'],
    boxBore: row.boxBoreMm as StockItemInput['boxBore'],
    stemDiameter: row.stemDiameterMm as StockItemInput['stemDiameter'],
    thread: row.thread,
    length: row.lengthMm as StockItemInput['length'],
    leadTimeDays: row.leadTimeDays,
    leastStock: row.leastStock as StockItemInput['leastStock'],
    packSize: row.packSize as StockItemInput['packSize'],
  }
}

export const unitOf = (kind: string): StockItem['unit'] => (kind === 'cord' ? 'm' : 'pc')

/** The day on the lot is its last good one. */
export const isExpiredOn = (expiresOn: string | null, today: string): boolean => expiresOn !== null && expiresOn < today

type ItemRow = StockItemModel & { readonly lots: readonly StockLotModel[]; readonly movements: readonly Moved[] }

function presentItem(row: ItemRow, today: string): StockItem {
  const moved = stockAsMoved(row.movements)
  const lots = row.lots
    .map((lot) => presentLot(lot, moved, today))
    .filter(({ amount }) => amount !== 0)
    .toSorted((one, other) => byDay(one.expiresOn, other.expiresOn))
  const onHand = lots.reduce((sum, { amount, isExpired }) => sum + (isExpired ? 0 : amount), 0)
  return {
    itemId: row.id,
    ...presentInput(row),
    unit: unitOf(row.kind),
    revision: row.revision,
    onHand: withoutDust(onHand) as StockItem['onHand'],
    lots,
    onOrder: moved.awaited.map(({ amount, ...order }) => ({
      ...order,
      amount: amount as StockItem['onOrder'][number]['amount'],
    })),
  }
}

/** What expires first, first; what never does, last. */
function byDay(one: string | null, other: string | null): number {
  if (one === other) return 0
  return one === null || (other !== null && other < one) ? 1 : -1
}

function presentLot({ id, label, batch, expiresOn }: StockLotModel, { lots }: StockAsMoved, today: string): StockLot {
  const amount = (lots.get(id) ?? 0) as StockLot['amount']
  return { lotId: id, label, batch, amount, expiresOn, isExpired: isExpiredOn(expiresOn, today) }
}
