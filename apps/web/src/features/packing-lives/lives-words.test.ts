import { expect, it } from 'vitest'
import {
  differenceInWords,
  lawMissing,
  letterOf,
  limitedInWords,
  medianInWords,
  monthsInWords,
  shapeInWords,
} from './lives-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')

it.each([
  [9.44, '9.4 months'],
  [0.96, '1.0 months'],
  [41.6, '42 months'],
])('%d months are %s', (months, words) => expect(plain(monthsInWords(months))).toBe(words))

it.each([
  [{ median: 41, medianLower: 35.2, medianUpper: 48 }, '41 months (35 to 48)'],
  [{ median: 41, medianLower: 35, medianUpper: null }, '41 months (35 or more)'],
  [{ median: 41, medianLower: null, medianUpper: 48 }, '41 months (48 or less)'],
  [{ median: 41, medianLower: null, medianUpper: null }, '41 months'],
  [{ median: null, medianLower: 35, medianUpper: null }, 'over half still going'],
])('a median of %o is %s', (median, words) => expect(plain(medianInWords(median as never))).toBe(words))

it('the shape is judged by its limits, not by its value', () => {
  expect(shapeInWords({ value: 2, lower: 1.2, upper: 3 })).toBe('wears out with age')
  expect(shapeInWords({ value: 0.6, lower: 0.4, upper: 0.9 })).toBe('fails young')
  expect(shapeInWords({ value: 2, lower: 0.9, upper: 4 })).toBe('no sign of either')
  expect(limitedInWords({ value: 2.04, lower: 0.9, upper: 41.6 })).toBe('2.0 (0.9 to 42)')
})

it('too few lives are said with their number before any other reason', () => {
  expect(lawMissing({ isTooFew: true, wornOut: 1, weibullMissing: 'x' })).toBe('too few: 1 life worn out, five are needed')
  expect(lawMissing({ isTooFew: false, wornOut: 9, weibullMissing: 'no shape fits best' })).toBe('no shape fits best')
})

it.each([
  [
    { chiSquared: 12.34, degreesOfFreedom: 3, p: 0.006 },
    'They differ by more than chance (log-rank test, chi-squared 12.3 with 3 degrees of freedom, p 0.006).',
  ],
  [
    { chiSquared: 40, degreesOfFreedom: 1, p: 1e-9 },
    'They differ by more than chance (log-rank test, chi-squared 40.0 with 1 degree of freedom, p under 0.001).',
  ],
  [
    { chiSquared: 1, degreesOfFreedom: 1, p: 0.317 },
    'No difference that chance could not make (log-rank test, chi-squared 1.0 with 1 degree of freedom, p 0.317).',
  ],
  [null, 'Too few are worn out to tell whether packings differ: it takes two with five each.'],
])('a difference of %o', (logRank, words) => expect(differenceInWords(logRank)).toBe(words))

it('lines are lettered from A on', () => expect([0, 1, 25].map(letterOf)).toEqual(['A', 'B', 'Z']))
