import { describe, expect, it } from 'vitest'
import { figureInWords, readTyped } from './figure-words.ts'

describe('a figure in words', () => {
  it.each([
    [0.135, 'ratio', '0.135'],
    [-40, '°C', '−40 °C'],
    [90, '°', '90°'],
    [121.1111, '°C', '121.1 °C'],
    [7.5, 'pH', 'pH 7.5'],
    [3, 'day', '3 days'],
    [1, 'day', '1 day'],
    [30, 'money/t', '30 for 1 t'],
    [0.1 + 0.2, 'mL', '0.3 mL'],
  ])('%s %s is %s', (value, unit, said) => {
    expect(figureInWords(value, unit).replaceAll('\u00a0', ' ')).toBe(said)
  })
})

describe('a figure typed', () => {
  const pressure = { label: 'Highest pressure', unit: 'bar', min: 0.1, max: 1000, step: 1 }
  it.each([
    ['80', { value: 80 }],
    ['12,5', { value: 12.5 }],
    ['', { fault: 'Is needed' }],
    ['much', { fault: 'Is no figure' }],
    ['3 furlongs', { fault: 'Its unit is not known here' }],
    ['0', { fault: 'Highest pressure: at least 0.1\u00a0bar' }],
    ['2000', { fault: 'Highest pressure: at most 1000\u00a0bar' }],
  ])('%s is %o', (typed, read) => {
    expect(readTyped(typed, pressure)).toEqual(read)
  })
  it('in another unit is turned into ours: 150 psi', () => {
    expect(readTyped('150 psi', pressure).value).toBeCloseTo(10.342, 3)
  })
})
