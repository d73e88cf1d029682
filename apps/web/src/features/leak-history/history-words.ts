import type { LeakHistory, LeakStep } from '@glandkeeper/contract/leaks'
import { lengthInWords } from '@glandkeeper/drawings/leak-words'
import { format } from 'date-fns'
import { atSite } from '../../platform/site-time.ts'
import { formatCount } from '../../ui/count.ts'

const NBSP = '\u00a0'
const HOUR = 3_600_000
const DAY = 24 * HOUR

interface Figure {
  readonly name: string
  readonly says: string
}

/** The valve in figures; what cannot be said is left out. */
export function figuresOf(history: LeakHistory, timeZone: string): Figure[] {
  const { watchedSince, daysWatched, leaks, daysLeaking, nipsPerDryMonth, leaksPerThousandMonths } = history
  if (watchedSince === null) return []
  const since = format(atSite(new Date(watchedSince), timeZone), 'd MMM yyyy')
  return [
    { name: 'watched since', says: `${since}, ${lengthInWords(daysWatched)}` },
    { name: 'leaks', says: formatCount(leaks.length) },
    { name: 'days leaking', says: daysLeaking > 0 && daysLeaking < 1 ? 'under 1' : formatCount(Math.round(daysLeaking)) },
    ...(nipsPerDryMonth === null ? [] : [{ name: 'nips in a dry month', says: nipsPerDryMonth.toFixed(1) }]),
    ...(leaksPerThousandMonths === null
      ? []
      : [{ name: 'leaks in 1,000 valve-months', says: formatCount(Math.round(leaksPerThousandMonths)) }]),
  ]
}

/** @example laterInWords('2026-03-02T08:00:00Z', '2026-03-05T08:00:00Z') // → '3 days later' */
export function laterInWords(before: string, at: string): string {
  const ms = Date.parse(at) - Date.parse(before)
  if (ms < 60_000) return 'at once'
  if (ms < 1.5 * HOUR) return `${Math.round(ms / 60_000)}${NBSP}min later`
  return `${lengthInWords(ms / DAY).replace(' ', NBSP)} later`
}

/** How long it stood: until it was seen gone, or until now. */
export function stoodInWords({ openedAt, verifiedAt }: { openedAt: string; verifiedAt: string | null }, now: Date): string {
  const ms = (verifiedAt === null ? now.getTime() : Date.parse(verifiedAt)) - Date.parse(openedAt)
  if (verifiedAt !== null && ms < HOUR) return 'gone on the same visit'
  return `${lengthInWords(Math.max(ms, 0) / DAY)}${verifiedAt === null ? ' so far' : ''}`
}

/** @example worstInWords({ worst: 'drip', worstScreening: 900 }) // → 'drip, 900 ppmv' */
export function worstInWords({ worst, worstScreening }: Pick<LeakHistory['leaks'][number], 'worst' | 'worstScreening'>): string {
  const measured = worstScreening === null ? null : `${formatCount(Math.round(worstScreening))}${NBSP}ppmv`
  return [worst, measured].filter((part) => part !== null).join(', ') || 'not said'
}

export const stepWords = {
  seen: 'Seen',
  'came back': 'Came back',
  attempt: 'Attempt',
  'put off': 'Put off',
  'seen without a leak': 'Seen without a leak',
} as const satisfies Readonly<Record<LeakStep['what'], string>>
