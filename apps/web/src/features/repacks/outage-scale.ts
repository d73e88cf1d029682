import type { Outage } from '@glandkeeper/contract/outages'
import { addDays, addMonths, differenceInCalendarDays, format, parseISO, startOfMonth } from 'date-fns'
import { daysOf, type OutageDays } from './axis-geometry.ts'

type Days = Pick<Outage, 'earliestOn' | 'likelyOn' | 'latestOn' | 'days'>

export interface OutageScale {
  readonly daysOf: (outage: Days) => OutageDays
  readonly months: readonly { readonly x: number; readonly name: string | null }[]
}

const EDGE = 6
/** A month this wide has room for its name. */
const NAMED = 44

/** One scale of whole months for all outages of a list, so that a glance compares them. */
export function outageScale(outages: readonly Days[], width: number): OutageScale {
  const firsts = outages.map(({ earliestOn }) => earliestOn).toSorted()
  const ends = outages.map(({ latestOn, days }) => addDays(parseISO(latestOn), days))
  const first = startOfMonth(parseISO(firsts[0] ?? '2000-01-01'))
  const last = startOfMonth(addMonths(new Date(Math.max(...ends.map(Number), Number(first))), 1))
  const whole = differenceInCalendarDays(last, first)
  const at = (day: Date) => EDGE + (differenceInCalendarDays(day, first) / whole) * (width - 2 * EDGE)
  const starts: Date[] = []
  for (let month = first; month <= last; month = addMonths(month, 1)) starts.push(month)
  const step = Math.ceil(NAMED / ((width - 2 * EDGE) / Math.max(1, starts.length - 1)))
  return {
    daysOf: ({ days, ...outage }) => {
      const lastOn = format(addDays(parseISO(outage.likelyOn), days - 1), 'yyyy-MM-dd')
      return daysOf({ ...outage, lastOn }, (day) => at(parseISO(day)))
    },
    months: starts.map((month, index) => {
      const isNamed = index % step === 0 && index < starts.length - 1
      return { x: at(month), name: isNamed ? format(month, index === 0 || month.getMonth() === 0 ? 'MMM yy' : 'MMM') : null }
    }),
  }
}
