import type { StockItem, StockOutlook } from '@glandkeeper/contract/stores'
import { differenceInCalendarDays, parseISO } from 'date-fns'
import { counted } from '../../ui/count.ts'
import { formatDay } from '../../platform/site-time.ts'
import { formatAmount, type Unit } from './amount-words.ts'

type Ordering = Pick<StockOutlook, 'orderBy' | 'isLate' | 'orderAmount'>
type Shortage = Pick<StockOutlook, 'shortOn' | 'shortBy' | 'belowLeastOn'>

const until = (today: string, day: string) => differenceInCalendarDays(parseISO(day), parseISO(today))

/**
 * What to order and by when; null while there is nothing to order.
 *
 * @example orderInWords({ orderBy: '2026-03-04', isLate: true, orderAmount: 16 }, 'm', '2026-03-07') // → 'Order 16 m by 4 Mar 2026: late by 3 days'
 */
export function orderInWords({ orderBy, isLate, orderAmount }: Ordering, unit: Unit, today: string): string | null {
  if (orderBy === null || orderAmount <= 0) return null
  const act = `Order ${formatAmount(orderAmount, unit)} by ${formatDay(orderBy)}`
  const days = until(today, orderBy)
  if (isLate) return days < 0 ? `${act}: late by ${counted(-days, 'day')}` : `${act}: late`
  if (days === 0) return `${act}: today`
  return act
}

/** From when there is not enough, and how much is missing; null while there is enough. */
export function shortageInWords({ shortOn, shortBy, belowLeastOn }: Shortage, unit: Unit): string | null {
  if (shortOn !== null) return `Short by ${formatAmount(shortBy, unit)} on ${formatDay(shortOn)}`
  if (belowLeastOn !== null) return `Below the least stock from ${formatDay(belowLeastOn)}`
  return null
}

/** What somebody has to mind about an item today, whatever the plan. */
export function mindInWords({ onHand, lots, unit }: Pick<StockItem, 'onHand' | 'lots' | 'unit'>): string[] {
  const expired = lots.filter(({ isExpired, amount }) => isExpired && amount > 0)
  const lost = expired.reduce((sum, { amount }) => sum + amount, 0)
  return [
    onHand < 0 && 'More was used than anybody put down: count it.',
    expired.length > 0 && `${formatAmount(lost, unit)} expired: not counted.`,
  ].filter((line) => line !== false)
}

/** @example expiryInWords('2026-05-01', 3.2, 'm') // → '3.2 m expires unused on 1 May 2026.' */
export function expiryInWords(on: string, amount: number, unit: Unit): string {
  return `${formatAmount(amount, unit)} expires unused on ${formatDay(on)}.`
}

/** Items that need a hand first: late ones, then by the day to order by, then by name. */
export function byUrgency<Row extends { readonly item: Pick<StockItem, 'name'>; readonly outlook: StockOutlook | null }>(
  rows: readonly Row[],
): Row[] {
  const dayOf = ({ outlook }: Row) => outlook?.orderBy ?? '9999'
  return rows.toSorted((a, b) => {
    if (dayOf(a) !== dayOf(b)) return dayOf(a) < dayOf(b) ? -1 : 1
    return a.item.name.localeCompare(b.item.name, 'en')
  })
}
