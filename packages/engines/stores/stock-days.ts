import { type CalendarDay, calendarDay } from './calendar-day.ts'
import { dayOf, type StockInput } from './stock-input.ts'

/** Sums of binary fractions miss their mark by less, and nobody counts it. */
export const STOCK_DUST = 1e-6

/** What happens to the stock, and what there is afterwards; below 0 where more was wanted than there is. */
export interface StockEvent {
  readonly day: CalendarDay
  readonly what: 'start' | 'arrival' | 'demand' | 'expiry'
  readonly amount: number
  readonly balance: number
  /** Who wants it, for a demand. */
  readonly for: string | null
  /** How much of a demand there is not on its day. */
  readonly lacking: number
}

interface Lot {
  readonly lastDay: number
  amount: number
}

type Happening =
  | { readonly day: CalendarDay; readonly what: 'arrival'; readonly amount: number }
  | { readonly day: CalendarDay; readonly what: 'demand'; readonly amount: number; readonly for: string }
  | { readonly day: CalendarDay; readonly what: 'expiry'; readonly lastDay: CalendarDay }

/** All that happens up to the horizon, beginning with what there is today. */
export function stockEvents(input: StockInput): StockEvent[] {
  const today = dayOf(input.today)
  // What does not expire is drawn last, so that only the lots that do need to be told apart.
  const lots = input.lots
    .flatMap(({ amount, expiresOn }): Lot[] => (expiresOn === null ? [] : [{ amount, lastDay: dayOf(expiresOn) }]))
    .toSorted((one, other) => one.lastDay - other.lastDay)
  const start = input.lots.reduce((sum, { amount }) => sum + amount, 0)
  const events: StockEvent[] = [{ day: today, what: 'start', amount: start, balance: start, for: null, lacking: 0 }]
  let balance = start
  for (const happening of happeningsOf(input, today)) {
    const amount = happening.what === 'expiry' ? takeExpired(lots, happening.lastDay) : happening.amount
    if (happening.what === 'expiry' && amount <= STOCK_DUST) continue
    if (happening.what === 'demand') takeFirst(lots, amount)
    balance += happening.what === 'arrival' ? amount : -amount
    const isDemand = happening.what === 'demand'
    const lacking = isDemand ? Math.min(amount, Math.max(0, -balance)) : 0
    events.push({ day: happening.day, what: happening.what, amount, balance, for: isDemand ? happening.for : null, lacking })
  }
  return events
}

/** In order of days; in a day first what arrives, then what is wanted, then what expires with it. */
function happeningsOf(input: StockInput, today: CalendarDay): Happening[] {
  const notBefore = (written: string) => calendarDay(Math.max(today, dayOf(written)))
  const lastDays = [...new Set(input.lots.flatMap(({ expiresOn }) => expiresOn ?? []))].map(dayOf)
  const expiries = lastDays.map((lastDay): Happening => ({ day: calendarDay(Math.max(today, lastDay)), what: 'expiry', lastDay }))
  const [gone, toCome] = [expiries.filter(isGone(today)), expiries.filter((expiry) => !isGone(today)(expiry))]
  const all: Happening[] = [
    ...gone,
    ...input.arrivals.map(({ on, amount }): Happening => ({ day: notBefore(on), what: 'arrival', amount })),
    ...input.demand.map((demand): Happening => ({
      day: notBefore(demand.on),
      what: 'demand',
      amount: demand.amount,
      for: demand.for,
    })),
    ...toCome,
  ]
  const horizon = dayOf(input.horizon)
  return all.filter(({ day }) => day <= horizon).toSorted((one, other) => one.day - other.day)
}

const isGone = (today: CalendarDay) => (happening: Happening) => happening.what === 'expiry' && happening.lastDay < today

function takeExpired(lots: readonly Lot[], lastDay: CalendarDay): number {
  let expired = 0
  for (const lot of lots) {
    if (lot.lastDay > lastDay) break
    expired += lot.amount
    lot.amount = 0
  }
  return expired
}

/** From the lots that expire first. */
function takeFirst(lots: readonly Lot[], amount: number): void {
  let wanted = amount
  for (const lot of lots) {
    const taken = Math.min(lot.amount, wanted)
    lot.amount -= taken
    wanted -= taken
    if (wanted <= 0) return
  }
}
