import { type Outcome, refuse } from '../outcome.ts'
import { type CalendarDay, calendarDayOf } from './calendar-day.ts'
import type { StockAmount } from './stock-quantity.ts'

/** What is known of one item; days as `2026-03-01`. */
export interface StockInput {
  readonly today: string
  /** In the store today. The last day to use it; null for what does not expire. */
  readonly lots: readonly { readonly amount: StockAmount; readonly expiresOn: string | null }[]
  /** Ordered and expected; what was expected before today is expected today. */
  readonly arrivals: readonly { readonly on: string; readonly amount: StockAmount }[]
  /** What was wanted before today and is still wanted counts for today. */
  readonly demand: readonly { readonly on: string; readonly amount: StockAmount; readonly for: string }[]
  readonly leadTimeDays: number
  /** A reserve to keep. */
  readonly leastStock: StockAmount
  /** The smallest amount that is sold; null for single pieces. */
  readonly packSize: StockAmount | null
  /** The last day looked at. */
  readonly horizon: string
}

const LONGEST_LEAD_TIME = 3_650
const LARGEST_AMOUNT = 1e12

type Refusal = Outcome<object> & { readonly ok: false }

/** The first fault of an input, by name; null when there is none. */
export function faultOfStockInput(input: StockInput): Refusal | null {
  const { today, horizon, lots, arrivals, demand, leadTimeDays, leastStock, packSize } = input
  return (
    notADay('today', today) ??
    notADay('horizon', horizon) ??
    firstOf(lots, ({ expiresOn }) => (expiresOn === null ? null : notADay('lots', expiresOn))) ??
    firstOf(arrivals, ({ on }) => notADay('arrivals', on)) ??
    firstOf(demand, ({ on }) => notADay('demand', on)) ??
    firstOf(lots, ({ amount }) => notAnAmount('lots', amount)) ??
    firstOf(arrivals, ({ amount }) => notAnAmount('arrivals', amount)) ??
    firstOf(demand, ({ amount }) => notAnAmount('demand', amount)) ??
    notAnAmount('leastStock', leastStock) ??
    notAPack(packSize) ??
    notALeadTime(leadTimeDays) ??
    (dayOf(horizon) < dayOf(today)
      ? refuse('stock/horizon-before-today', 'horizon', `the horizon ${horizon} lies before today, ${today}`)
      : null)
  )
}

/** A day that is known to be one; throws for any else, as it is a fault of the program. */
export function dayOf(written: string): CalendarDay {
  const day = calendarDayOf(written)
  if (day === null) throw new Error(`${written} is no day`)
  return day
}

function firstOf<Each>(all: readonly Each[], faultOf: (one: Each) => Refusal | null): Refusal | null {
  for (const one of all) {
    const fault = faultOf(one)
    if (fault) return fault
  }
  return null
}

function notADay(field: string, written: string): Refusal | null {
  return calendarDayOf(written) === null ? refuse('day/not-a-day', field, `a day like 2026-03-01, not ${written}`) : null
}

function notAnAmount(field: string, amount: number): Refusal | null {
  if (amount >= 0 && amount <= LARGEST_AMOUNT) return null
  return refuse('stock/not-an-amount', field, `an amount is from 0 to ${LARGEST_AMOUNT}, not ${amount}`)
}

function notAPack(packSize: number | null): Refusal | null {
  if (packSize === null || (packSize > 0 && packSize <= LARGEST_AMOUNT)) return null
  return refuse('stock/not-a-pack', 'packSize', `a pack holds more than 0, not ${packSize}`)
}

function notALeadTime(leadTimeDays: number): Refusal | null {
  if (Number.isInteger(leadTimeDays) && leadTimeDays >= 0 && leadTimeDays <= LONGEST_LEAD_TIME) return null
  return refuse(
    'stock/lead-time',
    'leadTimeDays',
    `a lead time is a whole number of days from 0 to ${LONGEST_LEAD_TIME}, not ${leadTimeDays}`,
  )
}
