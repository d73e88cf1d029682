import { format, parseISO } from 'date-fns'

export { standingFacts } from './standing-facts.ts'

interface UsedUp {
  /** One chance in ten that it is used up before this day; null is beyond twenty years, as for `late`. */
  readonly early: string | null
  /** One chance in ten that it is used up after this day. */
  readonly late: string | null
  readonly today: string
  readonly grain: 'day' | 'month'
}

/**
 * When the reserve is likely to be used up, as an interval: never one day.
 *
 * @example usedUpWhen({ early: '2027-03-03', late: '2027-08-20', today: '2026-05-04', grain: 'month' }) // → 'Mar to Aug 2027'
 */
export function usedUpWhen({ early, late, today, grain }: UsedUp): string {
  const day = grain === 'day' ? 'd ' : ''
  const said = (date: string, pattern = 'MMM yyyy') => format(parseISO(date), day + pattern)
  if (early === null) return 'beyond twenty years'
  if (late === null) return `after ${said(early)}`
  if (late <= today) return 'by now'
  if (early <= today) return `by ${said(late)}`
  if (said(early) === said(late)) return said(late)
  return `${said(early, early.slice(0, 4) === late.slice(0, 4) ? 'MMM' : 'MMM yyyy')} to ${said(late)}`
}

/** How sure the interval of `usedUpWhen` is: with two ends it holds four times in five, with one end nine times in ten. */
export function howSure({ early, late, today }: Omit<UsedUp, 'grain'>): string {
  return early !== null && late !== null && early > today ? 'four times in five' : 'nine times in ten'
}
