import type { RegulatedLeak } from '@glandkeeper/contract/leak-rules'
import { scaleTime } from '@visx/scale'
import { addDays, format, parseISO } from 'date-fns'
import { repairClock } from './clock-words.ts'

/** Fits beside the words on a desk, and under them on a phone. */
export const CLOCK_WIDTH = 320
const EDGE = 8
/** Further off than this the bars of ordinary leaks would be too short to read: a bar that goes on is broken at the edge. */
const MOST_DAYS = 90
const LEAST_AHEAD = 7

export interface ClockFrame {
  readonly x: (isoDay: string) => number
  readonly today: number
  readonly from: string
  readonly to: string
  readonly times: readonly { readonly x: number; readonly label: string }[]
}

export interface ClockBar {
  /** From the day it was seen to today, or to the day it was to be done by. */
  readonly ran: readonly [number, number]
  /** From today to the day it is to be done by; null past it. */
  readonly left: readonly [number, number] | null
  /** From the day it was to be done by to today; null before it. */
  readonly over: readonly [number, number] | null
  readonly attemptBy: number
  readonly attemptOn: number | null
  readonly repairBy: number
  readonly until: number | null
  readonly isBrokenLeft: boolean
  readonly isBrokenRight: boolean
}

/** One axis of days for all leaks that stand. */
export function clockFrame(leaks: readonly RegulatedLeak[], today: string): ClockFrame {
  const now = parseISO(today)
  const day = (date: Date) => format(date, 'yyyy-MM-dd')
  const seen = leaks.map(({ detectedOn }) => detectedOn)
  const ends = leaks.map((leak) => endOf(leak))
  const from = latest(day(addDays(now, -MOST_DAYS)), earliest(today, ...seen))
  const to = earliest(day(addDays(now, MOST_DAYS)), latest(day(addDays(now, LEAST_AHEAD)), ...ends))
  const scale = scaleTime<number>({ domain: [parseISO(from), parseISO(to)], range: [EDGE, CLOCK_WIDTH - EDGE], clamp: true })
  return {
    x: (isoDay) => scale(parseISO(isoDay)),
    today: scale(now),
    from,
    to,
    times: scale.ticks(4).map((at) => ({ x: scale(at), label: format(at, 'd MMM') })),
  }
}

const earliest = (...days: readonly string[]) => days.toSorted()[0] ?? ''
const latest = (...days: readonly string[]) => days.toSorted().at(-1) ?? ''

/** The last day that stands on the bar. */
function endOf({ repairBy, deferral }: RegulatedLeak): string {
  return latest(repairBy, deferral?.until ?? '')
}

export function clockBar(leak: RegulatedLeak, frame: ClockFrame, today: string): ClockBar {
  const { detectedOn, firstAttemptBy, firstAttemptOn, repairBy, deferral } = leak
  const { x } = frame
  const until = deferral?.until ?? null
  const { shape } = repairClock(leak, today)
  // Put off without a day: nothing runs out.
  const dueBy = shape === 'put off' && until === null ? null : endOf(leak)
  const isOver = shape === 'overdue' || shape === 'put off, past its day'
  return {
    ran: [x(detectedOn), isOver && dueBy !== null ? x(dueBy) : frame.today],
    left: dueBy !== null && !isOver ? [frame.today, x(dueBy)] : null,
    over: isOver && dueBy !== null ? [x(dueBy), frame.today] : null,
    attemptBy: x(firstAttemptBy),
    attemptOn: firstAttemptOn === null ? null : x(firstAttemptOn),
    repairBy: x(repairBy),
    until: until === null ? null : x(until),
    isBrokenLeft: detectedOn < frame.from,
    isBrokenRight: endOf(leak) > frame.to,
  }
}
