import type { StockItem } from '@glandkeeper/contract/stores'
import { type AmountBefore, limitsOfItem } from './limits-of-item.ts'
import { type ReadStock, stockOf } from './present.ts'

export interface StockLimit extends AmountBefore, Pick<StockItem, 'itemId' | 'name' | 'unit'> {}

/** Of every item what slots before a day may use together, until what is ordered today could be here. */
export async function stockLimits(
  read: ReadStock,
  siteId: string,
  { today, lateDays, now }: { readonly today: string; readonly lateDays: number; readonly now: Date },
): Promise<StockLimit[]> {
  const items = await stockOf(read, siteId, now)
  return items.flatMap((item) =>
    limitsOfItem(item, today, lateDays).map((limit) => ({ itemId: item.itemId, name: item.name, unit: item.unit, ...limit })),
  )
}
