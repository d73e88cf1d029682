const DOES_NOT = 'does not'

/** How days off come back, in the words of the form. */
const ruleOfWords: ReadonlyMap<string, string | null> = new Map([
  [DOES_NOT, null],
  ['every week', 'FREQ=WEEKLY'],
  ['every second week', 'FREQ=WEEKLY;INTERVAL=2'],
  ['every month on that date', 'FREQ=MONTHLY'],
  ['every year', 'FREQ=YEARLY'],
])

/** What the form offers. */
export const waysBack: readonly string[] = [...ruleOfWords.keys()]

/**
 * The rule that words of the form stand for; null where the days do not come back.
 *
 * @example ruleOf('every second week') // → 'FREQ=WEEKLY;INTERVAL=2'
 */
export function ruleOf(words: string): string | null {
  return ruleOfWords.get(words) ?? null
}

/**
 * A rule in words, or as its own text where the form has no words for it: nothing of it may be lost on the way.
 *
 * @example wordsOf('INTERVAL=2;FREQ=WEEKLY') // → 'every second week'
 * @example wordsOf('FREQ=WEEKLY;BYDAY=FR') // → 'FREQ=WEEKLY;BYDAY=FR'
 */
export function wordsOf(rule: string | null): string {
  if (rule === null) return DOES_NOT
  const known = [...ruleOfWords].find(([, other]) => other !== null && inOneForm(other) === inOneForm(rule))
  return known?.[0] ?? rule
}

/** Capitals, the order of the parts and an interval of one do not change what a rule says. */
function inOneForm(rule: string): string {
  return rule
    .trim()
    .toUpperCase()
    .replace(/^RRULE:/, '')
    .split(';')
    .filter((part) => part !== 'INTERVAL=1')
    .toSorted()
    .join(';')
}
