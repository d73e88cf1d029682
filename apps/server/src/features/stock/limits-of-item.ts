import { daysAfter } from '../../platform/local-time.ts'
import { withoutDust } from './stock-as-moved.ts'

export interface StockAhead {
  readonly onHand: number
  readonly onOrder: readonly { readonly amount: number; readonly expectedOn: string }[]
  readonly leadTimeDays: number
}

/** What all slots that begin before a day may use together. */
export interface AmountBefore {
  readonly beforeOn: string
  readonly amount: number
}

/**
 * Until something ordered today could be here, there is what is on hand and what is on its way: one limit up to each day
 * something comes, without it, and one up to the end of the lead time. Later there is as much as anybody orders.
 *
 * @param lateDays by which everything comes later than it is expected, what is ordered today too
 * @returns by day; an order whose day is over is taken to come after `lateDays`
 */
export function limitsOfItem({ onHand, onOrder, leadTimeDays }: StockAhead, today: string, lateDays: number): AmountBefore[] {
  const end = daysAfter(today, leadTimeDays + lateDays)
  if (end === today) return []
  const arrivals = onOrder.map(({ amount, expectedOn }) => ({
    amount,
    on: daysAfter(expectedOn > today ? expectedOn : today, lateDays),
  }))
  const days = new Set([...arrivals.map(({ on }) => on).filter((on) => on > today && on < end), end])
  return [...days].toSorted().map((beforeOn) => {
    const came = arrivals.reduce((sum, { amount, on }) => sum + (on < beforeOn ? amount : 0), 0)
    return { beforeOn, amount: withoutDust(Math.max(0, onHand + came)) }
  })
}
