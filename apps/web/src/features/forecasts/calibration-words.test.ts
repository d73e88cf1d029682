import type { CalibrationRow } from '@glandkeeper/contract/calibration'
import { expect, it } from 'vitest'
import { coverageInWords, missInWords } from './calibration-words.ts'

const row = (given: object) =>
  ({
    name: '3',
    forecasts: 212,
    lives: 212,
    ranOut: 120,
    within80: { share: 0.81, lower: 0.75, upper: 0.86 },
    within95: null,
    unknownBecause: null,
    middleMiss: null,
    besideStraightLine: null,
    ...given,
  }) as unknown as CalibrationRow
const plain = (words: string) => words.replaceAll('\u00a0', ' ')

it('212 forecasts with 81 % inside, 75 to 86 %, are said with their figures and what they mean', () => {
  expect(plain(coverageInWords(row({})))).toBe(
    'Of 212 forecasts of 212 packing lives, 81 % of the dates fell inside their 80 % interval (75 to 86 %): no more and no fewer than chance allows.',
  )
})

it.each([
  ['too narrow', { within80: { share: 0.5, lower: 0.4, upper: 0.6 } }],
  ['wider than need be', { within80: { share: 0.95, lower: 0.9, upper: 0.97 } }],
  [
    'Too few to tell: 1 forecast of 1 packing life, and',
    { forecasts: 1, lives: 1, within80: null, unknownBecause: 'too few lives' },
  ],
  ['no verdict', { ranOut: 40, within80: { share: 0.5, lower: 0.4, upper: 0.6 } }],
  ['Not to be told yet', { within80: null, unknownBecause: 'not watched long enough' }],
])('says %s', (words, given) => expect(plain(coverageInWords(row(given)))).toContain(words))

it('the straight line is named beside the forecast, on the same forecasts', () => {
  const besideStraightLine = { forecasts: 80, days: 90.4, straightLineDays: 150 }
  expect(plain(missInWords(row({ middleMiss: { forecasts: 90, days: 1 }, besideStraightLine }), 0))).toBe(
    'Where the travel was used up, the middle was off by 1 day or less in half of 90 forecasts. A straight line could be drawn for 80 of them: there it was off by 150 days, the forecast by 90 days.',
  )
  expect(plain(missInWords(row({ middleMiss: { forecasts: 90, days: 1 } }), 4))).toContain('Where the reserve fell to 4.0 mm')
  expect(missInWords(row({}), 0)).toContain('No life of these has run out yet')
})
