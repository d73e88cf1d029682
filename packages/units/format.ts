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

/**
 * A chance for a person: never said to be none or certain.
 *
 * @example formatChance(0.004) // → 'under 1\u00a0%'
 */
export function formatChance(chance: number): string {
  if (chance < 0.01) return `under 1${NO_BREAK_SPACE}%`
  if (chance > 0.99) return `over 99${NO_BREAK_SPACE}%`
  return `${Math.round(chance * 100)}${NO_BREAK_SPACE}%`
}

/**
 * The name of an input, a column or a code as a person reads it.
 *
 * @example nameInWords('boxBore') // → 'box bore'
 */
export function nameInWords(name: string): string {
  return name.replaceAll(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`)
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '0.25': 'a quarter turn',
  '0.5': 'half a turn',
  '0.75': 'three quarters of a turn',
  '1': 'one turn',
}

/** A hexagon nut turned by one of its flats has made a sixth of a turn. */
const FLATS_IN_A_TURN = 6
/** Sixths were often written down as 0.17 or 0.167: the second is still taken for what it was. */
const FLAT_ROUNDED = 0.003

/**
 * Turns in the words a fitter uses: in quarters where they are quarters, in flats of the nut where they are those.
 *
 * @example formatTurns(0.5) // → 'half a turn'
 * @example formatTurns(2) // → '2 turns'
 * @example formatTurns(1 / 3) // → '2 flats'
 */
export function formatTurns(value: number): string {
  const flats = Math.round(value * FLATS_IN_A_TURN)
  const areFlats = !Number.isInteger(value * 4) && Math.abs(value * FLATS_IN_A_TURN - flats) < FLAT_ROUNDED
  if (areFlats && flats !== 0) return flats === 1 ? 'one flat' : `${flats}${NO_BREAK_SPACE}flats`
  return FRACTIONS[String(value)] ?? `${Number(value.toFixed(2))}${NO_BREAK_SPACE}turns`
}
