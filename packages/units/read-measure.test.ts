import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readMeasure } from './read-measure.ts'

const value = (text: string, unit: string) => {
  const read = readMeasure(text, unit)
  return read.ok ? read.value : read.problem.code
}

describe('a figure typed by a person', () => {
  it.each([
    ['8.5', 'mm', 8.5],
    ['8,5 mm', 'mm', 8.5],
    ['5/16', 'mm', 7.9375],
    ['1 3/8"', 'mm', 34.925],
    ['1-3/8 in', 'mm', 34.925],
    ['2½ inch', 'mm', 63.5],
    ['.5 in', 'mm', 12.7],
    ['1e2', 'mm', 100],
    ['10 bar', 'MPa', 1],
    ['3 800 psi', 'MPa', 26.2000777],
    ['3800 psi', 'MPa', 26.2000777],
    ['212 °F', '°C', 100],
    ['273.15 K', '°C', 0],
    ['-40 F', '°C', -40],
    ['40 ft·lb', 'N·m', 54.2327179],
    ['480 in-lb', 'N·m', 54.2327179],
    ['3 flats', 'turn', 0.5],
    ['1/2', 'turn', 0.5],
    ['30 %', 'ratio', 0.3],
    ['', 'mm', 'measure/empty'],
    ['  ', 'mm', 'measure/empty'],
    ['wide', 'mm', 'measure/no-number'],
    ['1/0 in', 'mm', 'measure/no-number'],
    ['1,250', 'mm', 'measure/ambiguous-comma'],
    ['12 psi', 'mm', 'measure/unknown-unit'],
  ])('%s in %s is %s', (text, unit, expected) => {
    const read = value(text, unit)
    if (typeof expected === 'number' && typeof read === 'number') expect(read).toBeCloseTo(expected, 6)
    else expect(read).toBe(expected)
  })

  it('is a finite number or a named problem, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('mm', 'MPa', '°C', 'N·m', 'turn', 'ratio', ''), (text, unit) => {
        const read = readMeasure(text, unit)
        expect(read.ok ? Number.isFinite(read.value) : read.problem.code.startsWith('measure/')).toBe(true)
      }),
    )
  })
})
