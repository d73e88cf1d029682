import { expect, it } from 'vitest'
import { carbonInWords, markInWords, massInWords, moneyInWords, mostFirst } from './loss-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')
const range = (middle: number, low: number, high: number) => ({ middle, low, high })

it.each([
  [range(1.24, 0.8, 1.9), '1.2 kg/h (0.80 to 1.9)'],
  [range(412.6, 280, 1234.5), '413 kg/h (280 to 1,230)'],
  [range(0.1, 0.05, 0.2), '0.10 kg/h (0.050 to 0.20)'],
  [range(0.0123, 0.004, 0.04), '12 g/h (4.0 to 40)'],
  [range(1.87e-6, 1e-6, 3e-6), '1.9 mg/h (1.0 to 3.0)'],
  [range(0.5, 0, 1.5), '0.50 kg/h (0 to 1.5)'],
  [range(0.064, 0.064, 0.064), '64 g/h'],
  [range(0, 0, 0), '0 kg/h'],
  [range(1, 0.001, 2), '1.0 kg/h (under 0.01 to 2.0)'],
])('a loss of %o is %s', (loss, words) => expect(plain(massInWords(loss))).toBe(words))

it('money and carbon keep what a method is good for, and tonnes are said as such', () => {
  expect(moneyInWords(range(1234.5, 800, 1900))).toBe('1,230 (800 to 1,900)')
  expect(plain(carbonInWords(range(3120, 2000, 4400)))).toBe('3.1 t CO2e (2.0 to 4.4)')
  expect(plain(carbonInWords(range(312, 200, 440)))).toBe('312 kg CO2e (200 to 440)')
})

it('a formula from memory says so', () => expect(markInWords('from memory')).toContain('from memory'))

it('what loses most stands on top, and the list given stays as it was', () => {
  const losses = [1, 3, 2].map((middle) => ({ kilogramsPerHour: range(middle, 0, 9) }))
  expect(mostFirst(losses).map(({ kilogramsPerHour }) => kilogramsPerHour.middle)).toEqual([3, 2, 1])
  expect(losses[0]?.kilogramsPerHour.middle).toBe(1)
})
