import { type Trade, type TradeHours, trades } from '@glandkeeper/contract/outages'
import type { RepackSlot } from '@glandkeeper/contract/repack-plans'
import { addDays, format, getISOWeek, isSameMonth, isSameYear, parseISO } from 'date-fns'

type FirstDay = Pick<RepackSlot, 'earliestOn' | 'likelyOn' | 'latestOn'>

/** @example hoursInWords(41.25) // → '41.3 h' */
export function hoursInWords(hours: number): string {
  return `${figureOfHours(hours)}\u00a0h`
}

/** @example figureOfHours(40) // → '40' */
export function figureOfHours(hours: number): string {
  return Number.isInteger(hours) ? hours.toLocaleString('en-GB') : hours.toFixed(1)
}

/** The trades that have something to do, with their hours. @example tradesInWords({ fitting: 4, scaffolding: 0, isolating: 1.5 }) // → 'fitting 4 h, isolating 1.5 h' */
export function tradesInWords(hours: TradeHours): string {
  const busy = trades.filter((trade) => hours[trade] > 0)
  return busy.length === 0 ? 'no hours' : busy.map((trade) => `${trade} ${hoursInWords(hours[trade])}`).join(', ')
}

/** @example usedInWords({ used, hours }, 'fitting') // → '62 of 80 h' */
export function usedInWords({ used, hours }: Pick<RepackSlot, 'used' | 'hours'>, trade: Trade): string {
  return `${figureOfHours(used[trade])} of ${hoursInWords(hours[trade])}`
}

/** @example fortnightInWords('2027-06-07') // → 'weeks 23 and 24, from 7 Jun 2027' */
export function fortnightInWords(monday: string): string {
  const day = parseISO(monday)
  return `weeks ${getISOWeek(day)} and ${getISOWeek(addDays(day, 7))}, from ${format(day, 'd MMM yyyy')}`
}

/** An outage by its name, a fortnight by its weeks. */
export function slotInWords({ kind, name, earliestOn }: Pick<RepackSlot, 'kind' | 'name' | 'earliestOn'>): string {
  return kind === 'outage' ? name : fortnightInWords(earliestOn)
}

/** The slot of an id; null waits. An outage that has gone meanwhile has no name any more. */
export function slotNamed(slots: readonly RepackSlot[], slotId: string | null): string {
  if (slotId === null) return 'to wait'
  const slot = slots.find((one) => one.slotId === slotId)
  if (slot) return slotInWords(slot)
  const [kind, rest = ''] = slotId.split(':')
  return kind === 'fortnight' ? fortnightInWords(rest) : 'an outage this plan does not have'
}

/**
 * The first day, and how far it may be off.
 *
 * @example firstDayInWords({ earliestOn: '2027-06-02', likelyOn: '2027-06-09', latestOn: '2027-06-23' }) // → '9 Jun 2027, between 2 and 23 Jun'
 */
export function firstDayInWords({ earliestOn, likelyOn, latestOn }: FirstDay): string {
  const likely = format(parseISO(likelyOn), 'd MMM yyyy')
  return earliestOn === latestOn ? likely : `${likely}, between ${betweenInWords(earliestOn, latestOn, likelyOn)}`
}

function betweenInWords(first: string, last: string, beside: string): string {
  const [from, to, year] = [parseISO(first), parseISO(last), parseISO(beside)]
  const isOneYear = isSameYear(from, year) && isSameYear(to, year)
  const whole = isOneYear ? 'd MMM' : 'd MMM yyyy'
  return `${format(from, isSameMonth(from, to) ? 'd' : whole)} and ${format(to, whole)}`
}
