/** A no-break space keeps a figure and its unit on one line. */
const NO_BREAK_SPACE = '\u00a0'

/**
 * Millimetres for a person: one decimal, as a steel rule is read, with a true minus.
 *
 * @example formatMillimetres(5.525) // → '5.5 mm'
 */
export function formatMillimetres(value: number, decimals = 1): string {
  return `${value.toFixed(decimals).replace('-', '\u2212')}${NO_BREAK_SPACE}mm`
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '0.25': 'a quarter turn',
  '0.5': 'half a turn',
  '0.75': 'three quarters of a turn',
  '1': 'one turn',
}

/**
 * Turns in the words a fitter uses.
 *
 * @example formatTurns(0.5) // → 'half a turn'
 * @example formatTurns(2) // → '2 turns'
 */
export function formatTurns(value: number): string {
  return FRACTIONS[String(value)] ?? `${Number(value.toFixed(2))}${NO_BREAK_SPACE}turns`
}
