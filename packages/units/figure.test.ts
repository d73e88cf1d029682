import { describe, expect, it } from 'vitest'
import { formatFigure, inInches } from './figure.ts'

const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ') ?? null

describe('a figure for a person', () => {
  it.each([
    [0, 'mm', 1, '0.0 mm'],
    [-0.04, 'mm', 1, '−0.04 mm'],
    [0.135, 'ratio', 2, '0.135'],
    [0.00317, 'kg/h', 2, '0.00317 kg/h'],
    [0.0000356, 'mbar·L/s', 5, '3.56 × 10⁻⁵ mbar·L/s'],
    [0.875, 'mm', 1, '0.875 mm'],
    [-12.34, 'mm', 1, '−12.3 mm'],
    [26901.14, 'N', 0, '26 901 N'],
    [45, '°', 0, '45°'],
    [0.2, 'ratio', 2, '0.20'],
    [3.56e-6, 'mbar·L/s', 3, '3.56 × 10⁻⁶ mbar·L/s'],
    [1e-300, 'kg/h', 2, '1 × 10⁻³⁰⁰ kg/h'],
  ])('%d %s with %d places is %s', (value, unit, decimals, expected) => {
    expect(plain(formatFigure(value, unit, decimals))).toBe(expected)
  })

  it('stands beside its inch counterpart where there is one', () => {
    expect(plain(inInches(7.9375, 'mm'))).toBe('0.313 in')
    expect(plain(inInches(26.2, 'MPa'))).toBe('3 800 psi')
    expect(plain(inInches(24.211, 'N·m'))).toBe('17.9 ft·lb')
    expect(plain(inInches(26901.14, 'N'))).toBe('6 048 lbf')
    expect(inInches(0.25, 'ratio')).toBeNull()
  })
})
