import type { BoardRow } from '@glandkeeper/contract/board'
import { differenceInCalendarDays, format, parseISO } from 'date-fns'
import { usedUpWhen } from '../valves/index.ts'

type Forecast = Pick<BoardRow, 'reserve' | 'runsOutOn' | 'runsOutEarly' | 'runsOutLate' | 'chanceBeforeStop'>

/** When the travel is likely used up, as an interval; a spent gland says since when; null where nothing is forecast. */
export function usedUpInRow({ reserve, ...row }: Forecast, today: string): string | null {
  if (reserve !== null && reserve <= 0)
    return row.runsOutOn === null ? 'used up' : `since ${format(parseISO(row.runsOutOn), 'MMM yyyy')}`
  if (row.chanceBeforeStop === null) return null
  return usedUpWhen({ early: row.runsOutEarly, late: row.runsOutLate, today, grain: 'month' })
}

const DAYS_NAMED = 6

/** @example lookInRow('2026-05-05', '2026-05-04') // → 'Tue 5 May' */
export function lookInRow(on: string, today: string): string {
  const day = parseISO(on)
  const ahead = differenceInCalendarDays(day, parseISO(today))
  if (ahead === 0) return 'today'
  if (ahead > 0 && ahead <= DAYS_NAMED) return format(day, 'EEE d MMM')
  const said = format(day, on.slice(0, 4) === today.slice(0, 4) ? 'd MMM' : 'd MMM yyyy')
  return ahead < 0 ? `due ${said}` : said
}
