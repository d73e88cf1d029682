import type { Outage } from '@glandkeeper/contract/outages'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'

/** @example dayInWords('2027-06-09') // → '9 June 2027' */
export const dayInWords = (day: string): string => format(parseISO(day), 'd MMMM yyyy')

/** When an outage begins, how sure that is, and how long it is. */
export function outageDays({
  earliestOn,
  likelyOn,
  latestOn,
  days,
}: Pick<Outage, 'earliestOn' | 'likelyOn' | 'latestOn' | 'days'>): string {
  const long = `${days} ${days === 1 ? 'day' : 'days'}`
  if (earliestOn === latestOn) return `From ${dayInWords(likelyOn)}, settled; ${long}.`
  return `Likely from ${dayInWords(likelyOn)}, for ${long}. First day not settled: ${dayInWords(earliestOn)} to ${dayInWords(latestOn)}.`
}
