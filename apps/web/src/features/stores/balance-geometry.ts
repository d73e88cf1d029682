import { differenceInCalendarDays, eachMonthOfInterval, format, parseISO } from 'date-fns'

export interface BalanceInput {
  readonly today: string
  readonly until: string
  readonly onHand: number
  readonly leastStock: number
  readonly balances: readonly { readonly on: string; readonly balance: number }[]
}

export interface BalanceFrame {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface BalanceDrawing {
  /** The balance as a stair: stock changes on a day, and stays until the next. */
  readonly path: string
  readonly start: { readonly x: number; readonly y: number }
  readonly zero: number
  /** Null where none is to be kept. */
  readonly least: number | null
  /** One for each change, in order; worked out, as all of it is. */
  readonly changes: readonly { readonly x: number; readonly y: number; readonly isShort: boolean }[]
  readonly xOf: (day: string) => number
  readonly yOf: (amount: number) => number
}

const days = (from: string, to: string) => differenceInCalendarDays(parseISO(to), parseISO(from))
const rounded = (value: number) => Math.round(value * 10) / 10

/** What is on hand today is where the stair begins, and no change. */
export function changesOf<Balance extends { readonly on: string; readonly balance: number }>(
  balances: readonly Balance[],
  { today, onHand }: Pick<BalanceInput, 'today' | 'onHand'>,
): readonly Balance[] {
  const [first] = balances
  return first && first.on <= today && first.balance === onHand ? balances.slice(1) : balances
}

/** Stock over the time of the plan. Zero is always on it, and so is the least stock. */
export function balanceDrawing(input: BalanceInput, frame: BalanceFrame): BalanceDrawing {
  const { today, until, onHand, leastStock, balances } = input
  const span = Math.max(1, days(today, until), ...balances.map(({ on }) => days(today, on)))
  const amounts = [0, onHand, leastStock, ...balances.map(({ balance }) => balance)]
  const [low, high] = [Math.min(...amounts), Math.max(...amounts)]
  const range = high - low || 1
  // What happened before today stands at its left edge.
  const xOf = (day: string) => rounded(frame.left + (Math.max(days(today, day), 0) / span) * (frame.right - frame.left))
  const yOf = (amount: number) => rounded(frame.bottom - ((amount - low) / range) * (frame.bottom - frame.top))
  const changes = balances.map(({ on, balance }) => ({ x: xOf(on), y: yOf(balance), isShort: balance < 0 }))
  const start = { x: frame.left, y: yOf(onHand) }
  const steps = changes.map(({ x, y }) => `H${x}V${y}`).join('')
  return {
    path: `M${start.x} ${start.y}${steps}H${frame.right}`,
    start,
    zero: yOf(0),
    least: leastStock > 0 ? yOf(leastStock) : null,
    changes,
    xOf,
    yOf,
  }
}

const MOST_MONTH_NAMES_APART_PX = 58

/** The first of each month that has room for its name; the year beside January. */
export function monthsOf({ today, until }: Pick<BalanceInput, 'today' | 'until'>, xOf: (day: string) => number, right: number) {
  let last = Number.NEGATIVE_INFINITY
  return eachMonthOfInterval({ start: parseISO(today), end: parseISO(until) }).flatMap((month) => {
    const day = format(month, 'yyyy-MM-dd')
    const x = xOf(day)
    if (day < today || x - last < MOST_MONTH_NAMES_APART_PX || x > right) return []
    last = x
    return [{ x, label: format(month, month.getMonth() === 0 ? 'MMM yyyy' : 'MMM') }]
  })
}

/** Amounts on the axis at the side, the zero among them. */
export function levelsOf(low: number, high: number): number[] {
  const range = Math.max(high - low, 1e-6)
  const rough = range / 4
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((each) => each >= rough) ?? rough
  const first = Math.ceil(low / step)
  const count = Math.floor(high / step) - first + 1
  return Array.from({ length: count }, (_, index) => Number(((first + index) * step).toPrecision(12)))
}

const ONE_NUMBER_APART_PX = 18

/** Which changes have room for their number: the first of those that lie close together. */
export function numbersApart(changes: readonly { readonly x: number; readonly y: number }[]): ReadonlySet<number> {
  const placed: { x: number; y: number }[] = []
  return new Set(
    changes.flatMap(({ x, y }, index) => {
      if (placed.some((other) => Math.abs(other.x - x) < ONE_NUMBER_APART_PX && Math.abs(other.y - y) < ONE_NUMBER_APART_PX))
        return []
      placed.push({ x, y })
      return [index]
    }),
  )
}
