import type { StockItem } from '@glandkeeper/contract/stores'
import { type AmountBefore, limitsOfItem } from './limits-of-item.ts'

export interface StockLimit extends AmountBefore, Pick<StockItem, 'itemId' | 'name' | 'unit'> {}

/** Of every item what slots before a day may use together, until what is ordered today could be here. */
export function stockLimits(items: readonly StockItem[], today: string, lateDays: number): StockLimit[] {
  return items.flatMap((item) =>
    limitsOfItem(item, today, lateDays).map((limit) => ({ itemId: item.itemId, name: item.name, unit: item.unit, ...limit })),
  )
}
