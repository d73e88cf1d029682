import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { showStockOutlook } from '@glandkeeper/contract/stores'
import type { Read } from '../../platform/store.ts'
import { stockOf, todayOf } from '../stock/index.ts'
import { demandOfPlan } from './demand-of-plan.ts'
import { outlookOfItem } from './outlook-of-item.ts'

/** Every item of the store over the time of the plan in use. */
export async function stockOutlook(read: Read, siteId: string, now: Date): Promise<OkIn<typeof showStockOutlook>> {
  const [items, today] = await Promise.all([stockOf(read, siteId, now), todayOf(read, siteId, now)])
  const { demand, unknown, open, until } = await demandOfPlan(read, siteId, items, today)
  return {
    items: items.map((item) => {
      const wanted = demand.filter(({ itemId }) => itemId === item.itemId)
      return outlookOfItem(item, wanted, today, until)
    }),
    unknown: [...unknown],
    open: [...open],
    until,
  }
}
