import type { BeforeLeak, Leak } from '@glandkeeper/contract/leaks'
import { formatMillimetres } from '@glandkeeper/units/format'

/** One thing that was so before a leak: what it is called, and how it was. */
export interface WasSo {
  readonly name: string
  readonly says: string
  /** It points at a cause: shown first, and marked. */
  readonly standsOut: boolean
}

/** Nips that came in less than this share of the time before came closer. Set by us. */
const CLOSER = 0.7
/** Travel used so many times as fast as before was used faster. Set by us. */
const FASTER = 1.5
const DAYS_PER_MONTH = 30.4375
/** A packing so young should not leak: the same thirty days an outage is reviewed by. */
const YOUNG_DAYS = 30
/** Another packing than before is news for half a year. Set by us. */
const NEW_PACKING_DAYS = 183

/** What changed before a leak, in words; what stands out first. Nothing is said of what is not known. */
export function beforeInWords(before: BeforeLeak): WasSo[] {
  const said = [nips(before), travel(before), left(before), age(before), packing(before), heat(before), earlier(before)]
  const known = [...said, touched(before)].filter((each) => each !== null)
  return known.toSorted((one, other) => Number(other.standsOut) - Number(one.standsOut))
}

function nips({ daysBetweenNips, nipsCloser }: BeforeLeak): WasSo | null {
  if (daysBetweenNips.length === 0) return null
  const gaps = daysBetweenNips.slice(-6).map(whole).join(', ')
  const standsOut = nipsCloser !== null && nipsCloser.last < CLOSER * nipsCloser.first
  const closer = standsOut ? `nips came closer, from ${whole(nipsCloser.first)} to ${whole(nipsCloser.last)} days apart: ` : ''
  return { name: 'Days between nips', says: `${closer}${gaps}`, standsOut }
}

function travel({ usedLately, usedBefore }: BeforeLeak): WasSo | null {
  if (usedLately === null) return null
  const standsOut = usedBefore !== null && usedBefore > 0 && usedLately > FASTER * usedBefore
  const before = usedBefore === null ? '' : `, ${monthly(usedBefore)} before that`
  return { name: 'Travel used in a dry month', says: `${monthly(usedLately)} in the last three months${before}`, standsOut }
}

function left({ reserveThen }: BeforeLeak): WasSo | null {
  if (reserveThen === null) return null
  const standsOut = reserveThen <= 0
  return {
    name: 'Travel left',
    says: standsOut ? 'none: it could not be taken up any more' : formatMillimetres(reserveThen),
    standsOut,
  }
}

function age({ packingAgeDays }: BeforeLeak): WasSo | null {
  if (packingAgeDays === null) return null
  return { name: 'Age of the packing', says: lengthInWords(packingAgeDays), standsOut: packingAgeDays < YOUNG_DAYS }
}

function packing({ family, familyBefore, packingAgeDays }: BeforeLeak): WasSo | null {
  if (family === null) return null
  const isOther = familyBefore !== null && familyBefore !== family
  const isNew = packingAgeDays !== null && packingAgeDays < NEW_PACKING_DAYS
  return { name: 'Packing', says: isOther ? `${family}, after ${familyBefore}` : family, standsOut: isOther && isNew }
}

function heat({ temperature, hottestOfFamily }: BeforeLeak): WasSo | null {
  if (temperature === null || hottestOfFamily === null) return null
  const standsOut = temperature > hottestOfFamily
  return {
    name: 'Temperature',
    says: `${temperature}\u00a0°C; the packing is meant for ${hottestOfFamily}\u00a0°C at most`,
    standsOut,
  }
}

function earlier({ earlierLeaks }: BeforeLeak): WasSo | null {
  if (earlierLeaks === 0) return null
  return { name: 'Earlier leaks in this packing', says: String(earlierLeaks), standsOut: earlierLeaks > 1 }
}

function touched({ lastTouchedBy, lastTouchedCrew, lastTouchedDays, lastTouchedSays }: BeforeLeak): WasSo | null {
  if (lastTouchedBy === null) return null
  const crew = lastTouchedCrew === null ? '' : `, ${lastTouchedCrew}`
  const when = lastTouchedDays === null ? '' : `, ${lengthInWords(lastTouchedDays)} before`
  const what = lastTouchedSays === null ? '' : `: ${lastTouchedSays}`
  return { name: 'Last touched by', says: `${lastTouchedBy}${crew}${when}${what}`, standsOut: false }
}

/** How a leak stands, in words. */
export function leakStateInWords({ state, attempts, reopened }: Pick<Leak, 'state' | 'attempts' | 'reopened'>): string {
  const back = reopened === 0 ? '' : reopened === 1 ? ', after it came back once' : `, after it came back ${reopened} times`
  if (state === 'open') return attempts === 0 ? 'open, nothing done yet' : `open again after ${tries(attempts)}${back}`
  if (state === 'attempted') return `${tries(attempts)}, nobody has looked since`
  return attempts === 0 ? `gone without work${back}` : `seen without a leak after ${tries(attempts)}${back}`
}

function tries(count: number): string {
  return count === 1 ? 'one attempt' : `${count} attempts`
}

/** @example lengthInWords(90) // → '3 months' */
export function lengthInWords(days: number): string {
  if (days < 2 * DAYS_PER_MONTH) return days < 1.5 ? `${Math.max(Math.round(days * 24), 0)} hours` : `${whole(days)} days`
  const months = Math.round(days / DAYS_PER_MONTH)
  return months < 24 ? `${months} months` : `${(months / 12).toFixed(1)} years`
}

const whole = (days: number) => String(Math.round(days))
const monthly = (mm: number) => `${mm.toFixed(1).replace('-', '−')}\u00a0mm`
