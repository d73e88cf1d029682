import { expect, test } from 'vitest'
import { formatChance, nameInWords } from './format.ts'

test('a chance is a whole figure, and never said to be none or certain', () => {
  expect([0, 0.0099, 0.01, 0.644, 0.99, 0.9901, 1].map((chance) => formatChance(chance).replace('\u00a0', ' '))).toEqual([
    'under 1 %',
    'under 1 %',
    '1 %',
    '64 %',
    '99 %',
    'over 99 %',
    'over 99 %',
  ])
})

test('a name is read in words, whatever else stands in it', () => {
  expect(['boxBore', 'pressure', 'gland, studThread', 'ratePerDay'].map(nameInWords)).toEqual([
    'box bore',
    'pressure',
    'gland, stud thread',
    'rate per day',
  ])
})
