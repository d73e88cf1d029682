import type { StockItem, StockOutlook } from '@glandkeeper/contract/stores'
import { stockProjection, type StockChange } from '@glandkeeper/engines/stores/stock-projection'
import { stockAmount } from '@glandkeeper/engines/stores/stock-quantity'
import { amountInWords, withoutDust } from '../stock/index.ts'

export interface Wanted {
  readonly on: string
  readonly amount: number
  readonly for: string
}

type ItemAhead = Pick<StockItem, 'itemId' | 'unit' | 'lots' | 'onOrder' | 'leadTimeDays' | 'leastStock' | 'packSize'>

/** Stock of an item day by day until the last day, with what is wanted of it and what is on order, and when to order more. */
export function outlookOfItem(item: ItemAhead, wanted: readonly Wanted[], today: string, until: string): StockOutlook {
  const good = item.lots.filter(({ isExpired }) => !isExpired)
  const owed = good.reduce((sum, { amount }) => sum - Math.min(0, amount), 0)
  const found = stockProjection({
    today,
    lots: good.map(({ amount, expiresOn }) => ({ amount: stockAmount(Math.max(0, amount)), expiresOn })),
    arrivals: item.onOrder.map(({ amount, expectedOn }) => ({ on: expectedOn, amount: stockAmount(amount) })),
    demand: [
      ...(owed > 0 ? [{ on: today, amount: stockAmount(owed), for: USED_UNSEEN }] : []),
      ...wanted.map((one) => ({ ...one, amount: stockAmount(one.amount) })),
    ],
    leadTimeDays: item.leadTimeDays,
    leastStock: stockAmount(item.leastStock),
    packSize: stockAmount(item.packSize),
    horizon: until,
  })
  if (!found.ok) throw new Error(found.problem.detail)
  const { changes, short, belowLeast, order, expired } = found
  const toOrder = order !== null && order.amount > 0 ? order : null
  return {
    itemId: item.itemId,
    demand: kept(wanted.reduce((sum, { amount }) => sum + amount, 0)),
    balances: changes.map((change) => ({ on: change.on, balance: kept(change.balance), says: inWords(change, item.unit) })),
    belowLeastOn: belowLeast?.on ?? null,
    shortOn: short?.on ?? null,
    shortBy: kept(short?.by ?? 0),
    orderBy: toOrder?.by ?? null,
    isLate: toOrder?.isLate ?? false,
    orderAmount: kept(toOrder?.amount ?? 0),
    expires: expired.map(({ on, amount }) => ({ on, amount: kept(amount) })),
  }
}

/** A lot below nought: something was used that nobody had put down. */
const USED_UNSEEN = 'more was used than was put down'

const kept = (amount: number) => withoutDust(amount) as StockOutlook['demand']

function inWords({ what, amount, for: wantedBy }: StockChange, unit: StockItem['unit']): string {
  const much = amountInWords(amount, unit)
  switch (what) {
    case 'start':
      return `${much} on hand`
    case 'arrival':
      return `${much} of an order`
    case 'demand':
      return wantedBy === USED_UNSEEN ? `${much}: ${USED_UNSEEN}` : `${much} for ${wantedBy}`
    case 'expiry':
      return `${much} past their last day`
  }
}
