import type { QuantityMeta } from '@glandkeeper/contract/quantity'
import { readMeasure } from '@glandkeeper/units/read-measure'

const NO_BREAK_SPACE = '\u00a0'
const MOST_DECIMALS = 3
/** Nobody reads a gauge finer: a limit typed in °F or psi has a long tail in our units. */
const decimals: Readonly<Record<string, number>> = { '°C': 1, bar: 1, MPa: 2 }
const words: Readonly<Record<string, string>> = {
  ratio: '',
  day: 'days',
  'money/t': 'for 1\u00a0t',
  'money/m³': 'for 1\u00a0m³',
}

/**
 * A figure of the site with its unit, as on a drawing.
 *
 * @example figureInWords(0.135, 'ratio') // → '0.135'
 * @example figureInWords(-40, '°C') // → '−40 °C'
 */
export function figureInWords(value: number, unit: string): string {
  const figure = String(Number(value.toFixed(decimals[unit] ?? MOST_DECIMALS))).replace('-', '−')
  if (unit === 'pH') return `pH${NO_BREAK_SPACE}${figure}`
  if (unit === 'day' && value === 1) return `1${NO_BREAK_SPACE}day`
  const written = words[unit] ?? unit
  if (written === '°') return `${figure}°`
  return written === '' ? figure : `${figure}${NO_BREAK_SPACE}${written}`
}

/** What was typed as a figure in the unit of the quantity, or what is wrong with it. Other units are turned into it. */
export function readTyped(
  typed: string,
  { label, unit, min, max }: QuantityMeta,
): { value: number; fault?: never } | { fault: string; value?: never } {
  const read = readMeasure(typed, unit)
  if (!read.ok) return { fault: faults[read.problem.code] }
  if (read.value < min) return { fault: `${label}: at least ${figureInWords(min, unit)}` }
  return read.value > max ? { fault: `${label}: at most ${figureInWords(max, unit)}` } : { value: read.value }
}

const faults = {
  'measure/empty': 'Is needed',
  'measure/no-number': 'Is no figure',
  'measure/ambiguous-comma': 'Could be read two ways: write the decimals with a point',
  'measure/unknown-unit': 'Its unit is not known here',
} as const
