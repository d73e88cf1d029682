import { expect, test } from 'vitest'
import { formatChance, formatTurns, nameInWords } from './format.ts'

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

test('turns are quarters or flats of the nut where they are those, and figures where they are neither', () => {
  expect(
    [0.25, 0.5, 1, 1.25, 2, 1 / 6, 1 / 3, 0.667, 7 / 6, 0.17, 0.001].map((turns) => formatTurns(turns).replace('\u00a0', ' ')),
  ).toEqual([
    'a quarter turn',
    'half a turn',
    'one turn',
    '1.25 turns',
    '2 turns',
    'one flat',
    '2 flats',
    '4 flats',
    '7 flats',
    '0.17 turns',
    '0 turns',
  ])
})
