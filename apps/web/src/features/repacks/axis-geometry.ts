import { type Trade, trades } from '@glandkeeper/contract/outages'
import type { RepackPlan, RepackSlot } from '@glandkeeper/contract/repack-plans'
import { addDays, addMonths, differenceInCalendarDays, format, parseISO, startOfMonth } from 'date-fns'

/** The part of a plan that is drawn. */
export interface AxisView {
  readonly plan: Pick<RepackPlan, 'slots' | 'startsOn' | 'weeks'>
  /** First fortnight drawn, counted from that of the plan. */
  readonly from: number
  readonly width: number
}

/** Hours used against hours there, as the share of a bar; over 1 where they are over. */
export interface TradeBar {
  readonly trade: Trade
  readonly x: number
  readonly share: number
  readonly isThere: boolean
}

export interface FortnightColumn {
  readonly slot: RepackSlot
  readonly x: number
  readonly middle: number
  readonly bars: readonly TradeBar[]
}

/** Days of an outage on the axis: solid where it is likely to be, dashed where it may be. */
export interface OutageDays {
  readonly earliest: number
  readonly likely: number
  readonly likelyEnd: number
  readonly latestEnd: number
}

export interface OutageBlock {
  readonly slot: RepackSlot
  readonly x: number
  readonly row: number
  readonly bars: readonly TradeBar[]
  readonly days: OutageDays
}

export interface SlotAxis {
  readonly left: number
  readonly right: number
  /** px of a fortnight. */
  readonly step: number
  readonly barWidth: number
  /** Where to begin to see what is before and after; null where there is nothing. */
  readonly earlier: number | null
  readonly later: number | null
  readonly columns: readonly FortnightColumn[]
  readonly blocks: readonly OutageBlock[]
  readonly rows: number
  readonly months: readonly { readonly x: number; readonly name: string }[]
  readonly xOf: (day: string) => number
}

export const BLOCK_WIDTH = 150
const BLOCK_BAR = 10
const LEFT = 44
const RIGHT = 8
const LEAST_STEP = 28
const MOST_STEP = 64
const BLOCK_GAP = 10
/** Between two bars of a slot. */
const GAP = 3

/** A plan may begin in the middle of a fortnight, of which it has no slot: that is drawn empty, for outages in it. */
function wholeAxis({ slots, startsOn, weeks }: AxisView['plan']): { readonly first: Date; readonly fortnights: number } {
  const mondays = slots.flatMap(({ kind, earliestOn }) => (kind === 'fortnight' ? [earliestOn] : []))
  const monday = mondays[0]
  if (monday === undefined) return { first: parseISO(startsOn), fortnights: Math.ceil(weeks / 2) }
  const before = monday > startsOn ? 1 : 0
  return { first: addDays(parseISO(monday), -14 * before), fortnights: mondays.length + before }
}

/** Where the slots of a plan go: fortnights at their days, and above each outage a block with a mark at its days. */
export function slotAxis(view: AxisView): SlotAxis {
  const { plan, width } = view
  const whole = wholeAxis(plan)
  const from = Math.min(view.from, whole.fortnights - 1)
  const fortnights = Math.max(1, Math.min(whole.fortnights - from, Math.floor((width - LEFT - RIGHT) / LEAST_STEP)))
  const step = Math.min(MOST_STEP, (width - LEFT - RIGHT) / fortnights)
  const first = addDays(whole.first, from * 14)
  const right = LEFT + fortnights * step
  const xOf = (day: string) => LEFT + (differenceInCalendarDays(parseISO(day), first) / 14) * step
  const barWidth = Math.min(11, (step - 8) / 3 - GAP)
  const columns = plan.slots.flatMap((slot): FortnightColumn[] => {
    const x = xOf(slot.earliestOn)
    if (slot.kind !== 'fortnight' || x < LEFT - 0.5 || x > right - 0.5) return []
    const middle = x + step / 2
    return [{ slot, x, middle, bars: barsOf(slot, middle - (3 * barWidth + 2 * GAP) / 2, barWidth) }]
  })
  const blocks = outageBlocks(plan.slots, xOf, right)
  return {
    left: LEFT,
    right,
    step,
    barWidth,
    earlier: from > 0 ? Math.max(0, from - fortnights) : null,
    later: from + fortnights < whole.fortnights ? from + fortnights : null,
    columns,
    blocks,
    rows: Math.max(0, ...blocks.map(({ row }) => row + 1)),
    months: monthsBetween(first, fortnights, xOf),
    xOf,
  }
}

function barsOf({ used, hours }: RepackSlot, x: number, barWidth: number): TradeBar[] {
  return trades.map((trade, index) => ({
    trade,
    x: x + index * (barWidth + GAP),
    share: hours[trade] > 0 ? used[trade] / hours[trade] : 0,
    isThere: hours[trade] > 0,
  }))
}

/** Blocks stand over their days, and in another row where they would cover each other. */
function outageBlocks(slots: readonly RepackSlot[], xOf: (day: string) => number, right: number): OutageBlock[] {
  const ends: number[] = []
  const inside = (x: number) => Math.max(LEFT, Math.min(right, x))
  return slots
    .filter(({ kind, earliestOn, lastOn }) => kind === 'outage' && xOf(lastOn) >= LEFT && xOf(earliestOn) <= right)
    .toSorted((one, other) => one.likelyOn.localeCompare(other.likelyOn))
    .map((slot) => {
      const days = daysOf(slot, xOf)
      const middle = (inside(days.likely) + inside(days.likelyEnd)) / 2
      const x = Math.max(LEFT, Math.min(right - BLOCK_WIDTH, middle - BLOCK_WIDTH / 2))
      const free = ends.findIndex((end) => end + BLOCK_GAP <= x)
      const row = free < 0 ? ends.length : free
      ends[row] = x + BLOCK_WIDTH
      const drawn = {
        earliest: inside(days.earliest),
        likely: inside(days.likely),
        likelyEnd: inside(days.likelyEnd),
        latestEnd: inside(days.latestEnd),
      }
      return { slot, x, row, days: drawn, bars: barsOf(slot, x + 10, BLOCK_BAR) }
    })
}

/** A day ends where the next begins; however late it begins, it takes as long. */
export function daysOf(
  { earliestOn, likelyOn, latestOn, lastOn }: Pick<RepackSlot, 'earliestOn' | 'likelyOn' | 'latestOn' | 'lastOn'>,
  xOf: (day: string) => number,
): OutageDays {
  const end = (day: string, by: number) => xOf(format(addDays(parseISO(day), by), 'yyyy-MM-dd'))
  const slips = differenceInCalendarDays(parseISO(latestOn), parseISO(likelyOn))
  return { earliest: xOf(earliestOn), likely: xOf(likelyOn), likelyEnd: end(lastOn, 1), latestEnd: end(lastOn, slips + 1) }
}

function monthsBetween(first: Date, fortnights: number, xOf: (day: string) => number) {
  const last = addDays(first, fortnights * 14 - 1)
  const months: { x: number; name: string }[] = []
  for (let month = startOfMonth(addMonths(first, 1)); month <= last; month = addMonths(month, 1)) {
    const hasYear = months.length === 0 || month.getMonth() === 0
    months.push({ x: xOf(format(month, 'yyyy-MM-dd')), name: format(month, hasYear ? 'MMM yyyy' : 'MMM') })
  }
  return months
}
