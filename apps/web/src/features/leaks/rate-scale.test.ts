import { expect, it } from 'vitest'
import { rateMark, topOfRates } from './rate-scale.ts'

const row = (leaks: number, rate: number | null, upper: number | null) => ({ leaks, rate, upper })

it('the scale holds the limits of all rows', () => expect(topOfRates([row(10, 12, 20), row(5, 6, 14)])).toBe(20))

it('a group with hardly any leaks does not stretch it', () => {
  expect(topOfRates([row(10, 12, 20), row(1, 90, 500), row(0, 0, 4000)])).toBe(20)
  // Alone it has a scale, as far as its rate allows.
  expect(topOfRates([row(1, 90, 500)])).toBe(225)
})

it('without a rate there still is a scale', () => {
  expect(topOfRates([])).toBe(1)
  expect(topOfRates([row(0, null, null)])).toBe(1)
  expect(topOfRates([row(0, 0, 3)])).toBe(3)
})

it('dot and limits lie where the scale puts them, from zero at its edge', () => {
  expect(rateMark({ rate: 10, lower: 0, upper: 20 }, 20, 110)).toEqual({ dot: 55, from: 5, to: 105, isBeyond: false })
  expect(rateMark({ rate: 10, lower: null, upper: null }, 20, 110)).toEqual({ dot: 55, from: 55, to: 55, isBeyond: false })
})

it('what lies beyond the scale stays at its end and says so', () => {
  expect(rateMark({ rate: 10, lower: 5, upper: 40 }, 20, 110)).toMatchObject({ to: 105, isBeyond: true })
  expect(rateMark({ rate: 50, lower: 5, upper: null }, 20, 110)).toMatchObject({ dot: 105, isBeyond: true })
})

it('a row without a rate has no mark', () => expect(rateMark({ rate: null, lower: null, upper: null }, 20, 110)).toBeNull())
