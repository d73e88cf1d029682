import { counted, formatCount } from '../../ui/count.ts'
import type { Percent } from './percent-geometry.ts'
import { percentInWords } from './rule-words.ts'

/** Percent leaking of the quarter that runs, with what it is of. */
export function percentSays({ numerator, denominator, percent, allowed, isAbove }: Percent): string {
  if (percent === null) return 'No valve under this rule has been monitored in the quarter that runs.'
  const share = `${formatCount(numerator)} of ${counted(denominator, 'valve')} monitored in the quarter that runs ${numerator === 1 ? 'leaks or leaked' : 'leak or leaked'}: ${percentInWords(percent)}`
  if (allowed === null) return `${share}. The rule allows any percentage.`
  return `${share}, ${isAbove ? 'above' : 'not above'} the ${percentInWords(allowed)} that the rule allows.`
}

/** What so few or so many valves can tell; null where none was monitored. */
export function limitsSay({ lower, upper }: Percent): string | null {
  if (lower === null || upper === null) return null
  return `By so many valves it may be ${percentInWords(lower)} to ${percentInWords(upper)} (95 times in 100).`
}

/** Who does not count, and why. */
export function excludedSays({ excluded }: Percent): string | null {
  if (excluded.length === 0) return null
  return `Not counted: ${excluded.map(({ why, valves }) => `${formatCount(valves)} ${why}`).join('; ')}.`
}

/** For who does not see the columns. */
export function courseSays({ course, allowed }: Percent): string {
  const quarters = course.map(({ period, numerator, denominator, percent }) =>
    percent === null ? `${period}: none monitored` : `${period}: ${numerator} of ${denominator}, ${percentInWords(percent)}`,
  )
  const line = allowed === null ? 'No limit' : `${percentInWords(allowed)} allowed`
  return `Percent leaking by quarter. ${quarters.join('; ')}. ${line}.`
}
