import type { RegulatedLeak } from '@glandkeeper/contract/leak-rules'
import { differenceInCalendarDays, parseISO } from 'date-fns'
import { formatDay } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'

/** How a clock stands, as it is marked. */
export type ClockShape = 'met' | 'met late' | 'due' | 'overdue' | 'put off' | 'put off, past its day'

interface Clock {
  readonly shape: ClockShape
  readonly word: string
  readonly says: string
}

/** The first attempt at a leak, by the calendar of the site. */
export function attemptClock(leak: RegulatedLeak, today: string): Clock {
  const { attempt, firstAttemptOn, firstAttemptBy, repairedOn } = leak
  const madeOn = firstAttemptOn ?? repairedOn
  const shape = attempt === 'made' ? 'met' : attempt === 'made late' ? 'met late' : attempt
  if (shape === 'due' || shape === 'overdue') return { shape, word: attempt, says: byInWords(firstAttemptBy, today) }
  return { shape, word: attempt, says: metInWords(madeOn, firstAttemptBy) }
}

/** Its repair: done is when somebody saw it gone. */
export function repairClock(leak: RegulatedLeak, today: string): Clock {
  const { repair, repairedOn, repairBy, deferral } = leak
  if (repair === 'due' || repair === 'overdue') return { shape: repair, word: repair, says: byInWords(repairBy, today) }
  if (repair === 'put off' || repair === 'put off, past its day') {
    const until = deferral?.until ?? null
    return { shape: repair, word: repair, says: until === null ? 'no day set' : `until ${byInWords(until, today, '')}` }
  }
  const by = laterOf(repairBy, deferral?.until ?? null)
  return { shape: repair === 'verified' ? 'met' : 'met late', word: seenGone[repair], says: metInWords(repairedOn, by) }
}

const seenGone = { verified: 'seen gone', 'verified late': 'seen gone late' } as const

function laterOf(one: string, other: string | null): string {
  return other !== null && other > one ? other : one
}

function byInWords(day: string, today: string, before = 'by '): string {
  return `${before}${formatDay(day)}, ${fromToday(day, today)}`
}

/** @example fromToday('2026-05-07', '2026-05-04') // → 'in 3 days', which do not part */
export function fromToday(day: string, today: string): string {
  const days = differenceInCalendarDays(parseISO(day), parseISO(today))
  if (days === 0) return 'today'
  const [before, count] = days > 0 ? ['in', days] : ['over by', -days]
  return `${before} ${counted(count, 'day').replace(' ', '\u00a0')}`
}

function metInWords(on: string | null, by: string): string {
  if (on === null) return ''
  const late = differenceInCalendarDays(parseISO(on), parseISO(by))
  return late > 0 ? `${formatDay(on)}, ${counted(late, 'day')} late` : formatDay(on)
}

/** The next day something is to be done by; null where it is put off without a day, or seen gone. */
export function nextDeadline({ attempt, firstAttemptBy, repair, repairBy, deferral }: RegulatedLeak): string | null {
  const isTried = attempt === 'made' || attempt === 'made late'
  if (repair === 'verified' || repair === 'verified late') return null
  if (!isTried) return firstAttemptBy
  return repair === 'due' || repair === 'overdue' ? repairBy : (deferral?.until ?? null)
}

/** Those nobody has seen gone, what is due first on top; what has no day is last. */
export function standingLeaks(leaks: readonly RegulatedLeak[]): RegulatedLeak[] {
  const never = '9999'
  return leaks
    .filter(({ repairedOn }) => repairedOn === null)
    .toSorted((one, other) => {
      const [a, b] = [nextDeadline(one) ?? never, nextDeadline(other) ?? never]
      return a < b ? -1 : a > b ? 1 : one.tag < other.tag ? -1 : 1
    })
}

/** How many stand how, in a sentence over the table. */
export function standingInWords(leaks: readonly RegulatedLeak[], today: string): string {
  const standing = standingLeaks(leaks)
  if (standing.length === 0) return 'No leak under this rule waits for anything.'
  const over = standing.filter((leak) => (nextDeadline(leak) ?? today) < today).length
  const off = standing.filter(({ repair }) => repair === 'put off').length
  const parts = [
    over === 0 ? 'none past its day' : `${over} past ${over === 1 ? 'its' : 'their'} day`,
    off > 0 && `${off} put off`,
  ]
  return `${counted(standing.length, 'leak')} not seen gone: ${parts.filter(Boolean).join(', ')}.`
}
