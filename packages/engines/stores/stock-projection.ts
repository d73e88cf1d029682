import type { Outcome } from '../outcome.ts'
import { calendarDay, type CalendarDay, writtenDay } from './calendar-day.ts'
import { STOCK_DUST, type StockEvent, stockEvents } from './stock-days.ts'
import { dayOf, faultOfStockInput, type StockInput } from './stock-input.ts'
import { type StockAmount, stockAmount } from './stock-quantity.ts'

export interface StockChange {
  readonly on: string
  readonly what: StockEvent['what']
  readonly amount: StockAmount
  readonly balance: StockAmount
  /** Who wants it, for a demand. */
  readonly for: string | null
}

/** A day at whose end there is too little, and by how much. */
export interface Shortfall {
  readonly on: string
  readonly by: StockAmount
}

export interface StockOrder {
  /** The last day on which an order still comes in time. */
  readonly by: string
  /** That day is over: whatever is ordered comes late. */
  readonly isLate: boolean
  /** When it comes, ordered by that day, or today where that is over. */
  readonly arrivesOn: string
  /** Whole packs; 0 where all is well again before anything could come. */
  readonly amount: StockAmount
}

export interface StockProjection {
  /** What there is today, then all that happens, with the balance after it. */
  readonly changes: readonly StockChange[]
  readonly short: Shortfall | null
  readonly belowLeast: Shortfall | null
  /** Null where the least stock holds to the horizon. */
  readonly order: StockOrder | null
  /** Wanted sooner than anything ordered today comes, and not there on its day. */
  readonly notMet: readonly { readonly on: string; readonly amount: StockAmount; readonly for: string }[]
  /** What expires before anybody wants it. */
  readonly expired: readonly { readonly on: string; readonly amount: StockAmount }[]
}

/**
 * Stock of one item day by day, and what to order by when.
 *
 *     balance  = start + arrivals - demand - expired                      at the end of each day
 *     order by = first day below the least stock - lead time
 *     amount   = least stock - lowest balance from its arrival to the horizon, in whole packs
 *
 * In a day what arrives comes first, then what is wanted, then what expires is lost: a lot may be used on its last day.
 * Lots that expire first are drawn first; what arrives does not expire. What is wanted and not there stays owed, and is
 * paid by what arrives next. Days are those of the calendar: a lead time knows no weekend.
 *
 * @source SRC-780 days · SRC-781 order in a day · SRC-782 order by, and amount (docs/sources.md)
 * @returns days as `2026-03-01`, amounts in what the item is counted in; or `day/not-a-day`, `stock/not-an-amount`, `stock/not-a-pack`, `stock/lead-time`, `stock/horizon-before-today`
 * @example stockProjection({ today: '2026-03-01', lots: [{ amount: 10, expiresOn: null }], arrivals: [], demand: [{ on: '2026-03-20', amount: 12, for: 'V-101' }], leadTimeDays: 14, leastStock: 2, packSize: 5, horizon: '2026-06-01' }).order // → { by: '2026-03-06', isLate: false, arrivesOn: '2026-03-20', amount: 5 }
 */
export function stockProjection(input: StockInput): Outcome<StockProjection> {
  const fault = faultOfStockInput(input)
  if (fault) return fault
  const events = stockEvents(input)
  const dayEnds = events.filter(({ day }, place) => events[place + 1]?.day !== day)
  const belowLeast = firstBelow(dayEnds, input.leastStock)
  const earliest = calendarDay(dayOf(input.today) + input.leadTimeDays)
  return {
    ok: true,
    changes: events.map(({ day, what, amount, balance, for: wantedBy }) => {
      return { on: writtenDay(day), what, amount: stockAmount(amount), balance: stockAmount(balance), for: wantedBy }
    }),
    short: shortfallOf(firstBelow(dayEnds, 0), 0),
    belowLeast: shortfallOf(belowLeast, input.leastStock),
    order: belowLeast && orderFor(input, dayEnds, belowLeast.day, earliest),
    notMet: events.flatMap(({ day, for: wantedBy, lacking }) => {
      const isMet = wantedBy === null || lacking <= STOCK_DUST || day >= earliest
      return isMet ? [] : { on: writtenDay(day), amount: stockAmount(lacking), for: wantedBy }
    }),
    expired: events.flatMap(({ day, what, amount }) =>
      what === 'expiry' ? { on: writtenDay(day), amount: stockAmount(amount) } : [],
    ),
  }
}

function firstBelow(dayEnds: readonly StockEvent[], least: number): StockEvent | null {
  return dayEnds.find(({ balance }) => balance < least - STOCK_DUST) ?? null
}

function shortfallOf(event: StockEvent | null, least: number): Shortfall | null {
  return event && { on: writtenDay(event.day), by: stockAmount(least - event.balance) }
}

function orderFor(input: StockInput, dayEnds: readonly StockEvent[], below: CalendarDay, earliest: CalendarDay): StockOrder {
  const by = calendarDay(below - input.leadTimeDays)
  const arrives = calendarDay(Math.max(below, earliest))
  // The balance on its arrival is that of the day something last happened.
  const before = dayEnds.findLast(({ day }) => day <= arrives)
  const lowest = dayEnds.reduce(
    (least, { day, balance }) => (day > arrives ? Math.min(least, balance) : least),
    before?.balance ?? 0,
  )
  const packs = Math.ceil((input.leastStock - lowest - STOCK_DUST) / (input.packSize ?? 1))
  return {
    by: writtenDay(by),
    isLate: by < dayOf(input.today),
    arrivesOn: writtenDay(arrives),
    amount: stockAmount(Math.max(0, packs) * (input.packSize ?? 1)),
  }
}
