import { describe, expect, expectTypeOf, it } from 'vitest'
import { fahrenheitToCelsius, inchesToMillimetres, psiToBar } from './convert.ts'
import { formatMillimetres, formatTurns } from './format.ts'
import { addDays, days, daysBetween, instant, type Millimetre, mm, type Turn, turns } from './quantity.ts'

describe('a quantity', () => {
  it('is refused when it is no finite number', () => {
    for (const value of [NaN, Infinity, -Infinity]) expect(() => mm(value)).toThrow(RangeError)
  })

  it('of one unit is not taken for another, and a bare number not for either', () => {
    expectTypeOf(mm(1)).not.toEqualTypeOf<Turn>()
    const takesMillimetres = (value: Millimetre) => value
    // @ts-expect-error turns are not millimetres
    takesMillimetres(turns(1))
    // @ts-expect-error a bare number says nothing of its unit
    takesMillimetres(1)
    expect(takesMillimetres(mm(1))).toBe(1)
  })

  it('counts days both ways', () => {
    expect(daysBetween(instant(86_400_000), instant(0))).toBe(-1)
    expect(addDays(instant(0), days(1.5))).toBe(129_600_000)
  })
})

describe('conversions', () => {
  it('take an inch as 25.4 mm exactly', () => {
    expect(inchesToMillimetres(1.375)).toBeCloseTo(34.925, 12)
  })

  it('read Fahrenheit and pounds per square inch', () => {
    expect(fahrenheitToCelsius(-40)).toBe(-40)
    // One pound-force is 4.4482216152605 N by definition, one square inch 645.16 mm²; 1 N/mm² is 10 bar.
    expect(psiToBar(1)).toBeCloseTo((4.4482216152605 / 645.16) * 10, 15)
  })
})

describe('figures for a person', () => {
  it('keep the unit on the line of the figure', () => {
    expect(formatMillimetres(3.0)).toBe('3.0\u00a0mm')
    expect(formatMillimetres(0.875, 3)).toBe('0.875\u00a0mm')
    expect(formatMillimetres(-0.9)).toBe('\u22120.9\u00a0mm')
  })

  it('name the turns a fitter takes', () => {
    expect([0.25, 0.5, 1, 1.5].map(formatTurns)).toEqual(['a quarter turn', 'half a turn', 'one turn', '1.5\u00a0turns'])
  })
})
