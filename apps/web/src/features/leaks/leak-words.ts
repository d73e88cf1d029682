import type { Leak } from '@glandkeeper/contract/leaks'
import { differenceInCalendarMonths, differenceInDays, differenceInMonths, format, parseISO } from 'date-fns'
import { atSite, formatDay } from '../../platform/site-time.ts'
import { counted, formatCount } from '../../ui/count.ts'
import type { LeakFilters } from './leak-address.ts'

const NBSP = '\u00a0'

export const stateWords = {
  open: 'standing open',
  attempted: 'treated, nobody has looked since',
  verified: 'seen gone',
  'not verified': 'not seen gone',
} as const satisfies Readonly<Record<NonNullable<LeakFilters['state']>, string>>

/** @example dayAtSite('2026-05-04T23:30:00Z', 'Europe/London') // → '5 May 2026' */
export function dayAtSite(moment: string, timeZone: string): string {
  return format(atSite(parseISO(moment), timeZone), 'd MMM yyyy')
}

/** @example monthInWords('2026-03') // → 'March 2026' */
export function monthInWords(month: string): string {
  return format(parseISO(`${month}-01`), 'MMMM yyyy')
}

/** For a narrow choice. @example shortMonth('2026-09') // → 'Sep 2026' */
export function shortMonth(month: string): string {
  return format(parseISO(`${month}-01`), 'MMM yyyy')
}

/** @example screeningInWords(12500) // → '12,500 ppmv' */
export function screeningInWords(value: number): string {
  return `${formatCount(Math.round(value))}${NBSP}ppmv`
}

/** The worst that was seen or measured, in words. */
export function worstInWords({ worst, worstScreening }: Pick<Leak, 'worst' | 'worstScreening'>): string {
  const parts = [worst, worstScreening === null ? null : screeningInWords(worstScreening)]
  return parts.filter((part) => part !== null).join(', ') || 'not said'
}

/** What was done since it was seen. */
export function doneInWords({ attempts, firstAttemptAt }: Pick<Leak, 'attempts' | 'firstAttemptAt'>, timeZone: string): string {
  if (attempts === 0) return 'nothing yet'
  const times = counted(attempts, 'attempt')
  if (firstAttemptAt === null) return times
  return `${times}, ${attempts === 1 ? 'on' : 'the first on'} ${dayAtSite(firstAttemptAt, timeZone)}`
}

/** Whether somebody saw it gone. */
export function goneInWords({ state, verifiedAt }: Pick<Leak, 'state' | 'verifiedAt'>, timeZone: string): string {
  if (verifiedAt !== null && state === 'verified') return `seen gone on ${dayAtSite(verifiedAt, timeZone)}`
  return state === 'attempted' ? 'nobody has looked since' : 'still leaks as far as known'
}

/** What else there is to say of it: how often it came back, and until when it was put off. */
export function furtherInWords({ reopened, isDeferred, deferredUntil }: Leak): string[] {
  const back = reopened === 0 ? [] : [reopened === 1 ? 'came back once' : `came back ${formatCount(reopened)} times`]
  if (!isDeferred) return back
  return [...back, deferredUntil === null ? 'put off' : `put off until ${formatDay(deferredUntil)}`]
}

/** The packing it came in, and how old it was when the leak was first seen. */
export function packingInWords({ family, packedAt, openedAt }: Pick<Leak, 'family' | 'packedAt' | 'openedAt'>): string {
  const packing = family ?? 'packing not known'
  return packedAt === null ? `${packing}, age not known` : `${packing}, ${spanInWords(packedAt, openedAt)} old`
}

/** @example spanInWords('2025-01-05T08:00:00Z', '2026-03-20T08:00:00Z') // → '14 months' */
export function spanInWords(from: string, to: string): string {
  const [start, end] = [parseISO(from), parseISO(to)]
  const months = differenceInMonths(end, start)
  if (months < 2) return counted(Math.max(differenceInDays(end, start), 0), 'day').replace(' ', NBSP)
  return months < 36 ? `${months}${NBSP}months` : `${(months / 12).toFixed(1)}${NBSP}years`
}

/** What is named by an id or a code, in the words of the register. */
export interface Named {
  readonly areaName: (code: string) => string
  readonly outageName: (outageId: string) => string
}

/** One set filter as words that go on from "Leaks:". */
export function filterInWords(name: keyof LeakFilters, value: string, { areaName, outageName }: Named): string {
  switch (name) {
    case 'state':
      return stateWords[value as keyof typeof stateWords]
    case 'area':
      return `in ${areaName(value)}`
    case 'service':
      return `service ${value}`
    case 'family':
      return value === 'not known' ? 'packing not known' : `packed with ${value}`
    case 'age':
      return value === 'not known' ? 'age of the packing not known' : `packing aged ${value}`
    case 'month':
      return `first seen in ${monthInWords(value)}`
    case 'afterOutage':
      return `first seen within thirty days after ${outageName(value)}`
    case 'tag':
      return `at ${value}`
  }
}

/** @example pageInWords({ skip: 100, shown: 40, total: 140 }) // → '101 to 140 of 140' */
export function pageInWords({ skip, shown, total }: { skip: number; shown: number; total: number }): string {
  if (shown === 0) return `none of ${formatCount(total)}`
  return `${formatCount(skip + 1)} to ${formatCount(skip + shown)} of ${formatCount(total)}`
}

/** A month against the same one of the year before, for who does not see the bars. */
export function monthSays(month: string, leaks: number, yearBefore: number | null): string {
  const said = `${monthInWords(month)}: ${leaks === 0 ? 'no leak' : counted(leaks, 'leak')} first seen`
  return yearBefore === null ? said : `${said}, ${formatCount(yearBefore)} in the year before`
}

/** How the last twelve whole months stand to the twelve before them; the month that runs is left out. */
export function yearsInWords(months: readonly { readonly month: string; readonly leaks: number }[]): string | null {
  const whole = months.slice(0, -1)
  if (whole.length < 24) return null
  const sum = (part: typeof whole) => part.reduce((leaks, each) => leaks + each.leaks, 0)
  const [late, early] = [sum(whole.slice(-12)), sum(whole.slice(-24, -12))]
  const against = late === early ? 'as many as' : `${formatCount(Math.abs(late - early))} ${late > early ? 'more' : 'fewer'} than`
  return `${late === 0 ? 'No leak was' : counted(late, 'leak was', 'leaks were')} first seen in the last twelve whole months, ${against} in the twelve before.`
}

export function isMonthRunning(month: string, today: Date): boolean {
  return differenceInCalendarMonths(today, parseISO(`${month}-01`)) === 0
}
