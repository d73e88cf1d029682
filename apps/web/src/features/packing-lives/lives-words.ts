import type { ComparedPacking } from '@glandkeeper/contract/packing-lives'
import { counted } from '../../ui/count.ts'

const NBSP = '\u00a0'

/** @example monthsInWords(9.44) // → '9.4 months' */
export function monthsInWords(months: number): string {
  const figure = months < 10 ? months.toFixed(1) : String(Math.round(months))
  return `${figure}${NBSP}month${figure === '1' ? '' : 's'}`
}

type Median = Pick<ComparedPacking, 'median' | 'medianLower' | 'medianUpper'>

/** Half are worn out by then; a limit that nobody can tell yet is open. */
export function medianInWords({ median, medianLower, medianUpper }: Median): string {
  if (median === null) return 'over half still going'
  const to = (months: number) => monthsInWords(months).replace(/\u00a0months?$/, '')
  if (medianLower !== null && medianUpper !== null) return `${monthsInWords(median)} (${to(medianLower)} to ${to(medianUpper)})`
  if (medianLower !== null) return `${monthsInWords(median)} (${to(medianLower)} or more)`
  return medianUpper === null ? monthsInWords(median) : `${monthsInWords(median)} (${to(medianUpper)} or less)`
}

interface Limited {
  readonly value: number
  readonly lower: number
  readonly upper: number
}

/** What the shape says, as far as its limits let one say it. */
export function shapeInWords({ lower, upper }: Limited): string {
  if (lower > 1) return 'wears out with age'
  return upper < 1 ? 'fails young' : 'no sign of either'
}

export function limitedInWords({ value, lower, upper }: Limited): string {
  const figure = (each: number) => (each < 10 ? each.toFixed(1) : String(Math.round(each)))
  return `${figure(value)} (${figure(lower)} to ${figure(upper)})`
}

/** Why there is no law, or none that says much. */
export function lawMissing({
  isTooFew,
  wornOut,
  weibullMissing,
}: Pick<ComparedPacking, 'isTooFew' | 'wornOut' | 'weibullMissing'>): string {
  if (isTooFew) return `too few: ${counted(wornOut, 'life', 'lives')} worn out, five are needed`
  return weibullMissing ?? 'not known'
}

/** Whether the stairs differ by more than chance. */
export function differenceInWords(logRank: { chiSquared: number; degreesOfFreedom: number; p: number } | null): string {
  if (logRank === null) return 'Too few are worn out to tell whether packings differ: it takes two with five each.'
  const { chiSquared, degreesOfFreedom, p } = logRank
  const test = `log-rank test, chi-squared ${chiSquared.toFixed(1)} with ${counted(degreesOfFreedom, 'degree')} of freedom, p ${p < 0.001 ? 'under 0.001' : p.toFixed(3)}`
  if (p < 0.05) return `They differ by more than chance (${test}).`
  return `No difference that chance could not make (${test}).`
}

/** Two letters are enough where a name has no room. @example letterOf(1) // → 'B' */
export function letterOf(index: number): string {
  return String.fromCodePoint(65 + (index % 26))
}
