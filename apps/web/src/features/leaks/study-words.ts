import { type LeakRateRow, type LeakStudy, StudyPeriod } from '@glandkeeper/contract/leak-study'
import { counted, formatCount } from '../../ui/count.ts'

const NBSP = '\u00a0'

export const periodWords: Readonly<Record<StudyPeriod, string>> = {
  all: 'all records',
  'two years': 'the last two years',
  'one year': 'the last year',
}

/** Anything else in the address is all records. */
export function periodOf(address: URLSearchParams): StudyPeriod {
  return StudyPeriod.safeParse(address.get('period')).data ?? 'all'
}

const MOST_SAID = 1_000_000

/**
 * A chance as one in so many, in two figures: nobody reads 0.0025.
 *
 * @example chanceInWords(0.0025) // → '1 in 400 by chance'
 */
export function chanceInWords(chance: number): string {
  if (!(chance * MOST_SAID >= 1)) return `less than 1 in a million by chance`
  const one = 1 / chance
  const round = 10 ** Math.max(0, Math.floor(Math.log10(one)) - 1)
  return `1 in ${formatCount(Math.max(1, Math.round(one / round) * round))} by chance`
}

/** Why a list of those above is no list of the guilty, with figures of this plant. */
export function luckInWords({ valves, aboveInAll }: Pick<LeakStudy, 'valves' | 'aboveInAll'>): string {
  const rarity = valves >= 200 ? 100 : 10
  const lucky = Math.round(valves / rarity)
  return `${counted(aboveInAll, 'valve lies', 'valves lie')} above the limit of the mean. Of so many valves some do by chance alone: were all ${formatCount(valves)} alike, up to ${formatCount(lucky)} would still show a chance of 1 in ${rarity} or less. Look first where it is least.`
}

/** One decimal below ten, so that a rate of 0.4 and one of 0.1 differ. */
export function rateInWords(rate: number): string {
  return rate < 10 ? rate.toFixed(1) : formatCount(Math.round(rate))
}

/** A rate with its limits, or why there is none. */
export function rateWithLimits({ rate, lower, upper }: Pick<LeakRateRow, 'rate' | 'lower' | 'upper'>): string {
  if (rate === null) return 'not watched'
  if (lower === null || upper === null) return rateInWords(rate)
  return `${rateInWords(rate)} (${rateInWords(lower)} to ${rateInWords(upper)})`
}

/** Mean numbers of leaks and of nips are small: two decimals below one. */
export function meanInWords(mean: number): string {
  return mean < 1 ? mean.toFixed(2) : mean < 100 ? mean.toFixed(1) : formatCount(Math.round(mean))
}

/** @example percent(0.214) // → '21 %' */
export function percent(share: number): string {
  return `${share > 0 && share < 0.1 ? (share * 100).toFixed(1) : Math.round(share * 100)}${NBSP}%`
}

/** Whether leaks crowd after outages, in one sentence with the figures. */
export function afterOutagesInWords({ leaks, within, share, lower, upper, timeShare }: LeakStudy['afterOutages']): string {
  if (timeShare === null || timeShare === 0) return 'No outage has ended while valves were watched.'
  if (share === null || lower === null || upper === null) return 'No leak was first seen while valves were watched.'
  const said = `${formatCount(within)} of ${counted(leaks, 'leak')}, ${percent(share)}, ${within === 1 ? 'was' : 'were'} first seen within thirty days after an outage; ${percent(timeShare)} of the time watched lies there`
  if (lower > timeShare) return `${said}. That is more than chance gives: look at what is done to glands in outages.`
  if (upper < timeShare) return `${said}. That is less than chance would give.`
  return `${said}. No more and no less than chance allows.`
}

type Rate = Pick<LeakRateRow, 'rate' | 'lower' | 'upper'>

/** What a change of packing did, as far as limits that overlap let one say. */
export function changeInWords(before: Rate, after: Rate): string {
  if (before.rate === null || after.rate === null) return 'Watched too little to compare.'
  if (before.lower !== null && after.upper !== null && after.upper < before.lower) return 'Fewer leaks since, beyond chance.'
  if (before.upper !== null && after.lower !== null && after.lower > before.upper) return 'More leaks since, beyond chance.'
  return 'No difference that chance could not make.'
}
