import { inchCounterparts, spellings } from './written.ts'

const NO_BREAK_SPACE = '\u00a0'
/** A figure is never shown farther off than this share of itself: 0.135 does not become 0.14. */
const MOST_OFF = 0.005
const MOST_PLACES = 6
const SIGNIFICANT = 4

/**
 * A figure for a person: thousands apart, a true minus, its unit on the same line. Small figures get as many places as
 * they need, and very small ones powers of ten, instead of becoming nought.
 *
 * @example formatFigure(1234.567, 'N', 1) // → '1 234.6 N'
 * @example formatFigure(0.0000019, 'kg/h', 3) // → '1.9 × 10⁻⁶ kg/h'
 * @example formatFigure(0.00317, 'kg/h', 2) // → '0.00317 kg/h'
 */
export function formatFigure(value: number, unit: string, decimals: number): string {
  const places = placesFor(value, decimals)
  const figure = places === null ? inPowersOfTen(value) : inPlaces(value, places)
  if (unit === '' || unit === 'ratio') return figure
  return unit === '°' ? `${figure}°` : `${figure}${NO_BREAK_SPACE}${unit}`
}

/** The fewest places, from `decimals` up, that keep the figure; null where it takes too many to read. */
function placesFor(value: number, decimals: number): number | null {
  for (let places = decimals; places <= Math.max(MOST_PLACES, decimals); places += 1) {
    if (Math.abs(Number(value.toFixed(places)) - value) <= MOST_OFF * Math.abs(value)) return places
  }
  return null
}

/**
 * The same figure in the unit of people who think in inches; null where there is none.
 *
 * @example inInches(25.4, 'mm') // → '1.000 in'
 * @example inInches(100, '°C') // → '212 °F'
 */
export function inInches(value: number, unit: string): string | null {
  const counterpart = inchCounterparts[unit]
  const spelling = counterpart && spellings[unit]?.find(({ names }) => names.includes(counterpart.unit.toLowerCase()))
  if (!counterpart || !spelling) return null
  return formatFigure(value / spelling.factor - (spelling.offset ?? 0), counterpart.unit, counterpart.decimals)
}

function inPlaces(value: number, decimals: number): string {
  const [whole = '', part] = Math.abs(value).toFixed(decimals).split('.')
  const apart = whole.replaceAll(/\B(?=(\d{3})+$)/g, NO_BREAK_SPACE)
  const sign = value < 0 && Number(value.toFixed(decimals)) !== 0 ? '−' : ''
  return sign + (part === undefined ? apart : `${apart}.${part}`)
}

function inPowersOfTen(value: number): string {
  const [digits = '', power = '0'] = value.toExponential(SIGNIFICANT - 1).split('e')
  const raised = String(Number(power)).replaceAll(/./g, (sign) => RAISED[sign] ?? sign)
  return `${String(Number(digits)).replace('-', '−')}${NO_BREAK_SPACE}×${NO_BREAK_SPACE}10${raised}`
}

const RAISED: Readonly<Record<string, string>> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
}
