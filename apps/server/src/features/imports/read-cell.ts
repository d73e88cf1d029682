import { entryWords, headingUnits, type ImportColumn } from '@glandkeeper/contract/import-columns'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { BAR_PER_PSI, fahrenheitToCelsius, MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { momentOf } from './read-moment.ts'

/** A cell that could be read, empty or not; or what is wrong with it. */
export type CellReading = { readonly value: string | number | boolean | null } | { readonly fault: string }

const FORMULA = /^[=@]|^[+-]\s*[A-Za-z]+\s*\(/

/** Reads one cell as its column says. Empty is null: not given. */
export function readCell(text: string, column: ImportColumn, unit: string | null, timeZone: string): CellReading {
  // Spreadsheets, and our own file of bad rows, put an apostrophe before what must not be run as a formula.
  const cell = /^'[=+@-]/.test(text) ? text.slice(1) : text
  if (cell === '') return { value: null }
  if (FORMULA.test(cell)) return { fault: 'a formula is not read: save the file with values only' }
  const { reads } = column
  switch (reads.as) {
    case 'text':
      return { value: cell }
    case 'whole number':
      return /^-?\d{1,9}$/.test(cell) ? { value: Number(cell) } : { fault: 'not a whole number' }
    case 'yes or no':
      return yesOrNo(cell)
    case 'word':
      return wordOf(cell, reads.words)
    case 'kind of entry':
      return kindOfEntry(cell)
    case 'moment':
      return momentOf(cell, timeZone)
    case 'quantity':
      return quantityOf(cell, unit ?? reads.unit, reads)
  }
}

function yesOrNo(cell: string): CellReading {
  const word = cell.toLowerCase()
  if (['yes', 'y', 'true', '1', 'x'].includes(word)) return { value: true }
  return ['no', 'n', 'false', '0'].includes(word) ? { value: false } : { fault: 'say yes or no' }
}

function wordOf(cell: string, words: readonly string[]): CellReading {
  const word = words.find((known) => known.toLowerCase() === cell.toLowerCase())
  return word === undefined ? { fault: `not one of: ${words.join(', ')}` } : { value: word }
}

function kindOfEntry(cell: string): CellReading {
  const word = cell.toLowerCase()
  const kind = Object.hasOwn(entryWords, word) ? entryWords[word] : undefined
  return kind === undefined ? { fault: `not one of: ${Object.keys(entryWords).join(', ')}` } : { value: kind }
}

type QuantityColumn = Extract<ImportColumn['reads'], { as: 'quantity' }>

function quantityOf(cell: string, unit: string, { unit: into, schema }: QuantityColumn): CellReading {
  const step = quantities.get(innermost(schema))?.step ?? 0
  const unclear = unclearThousands(cell, step)
  if (unclear !== null) return { fault: unclear }
  const number = numberOf(cell, unit === 'in')
  if (number === null) return { fault: 'not a number' }
  if (unit === into) return { value: number }
  if (headingUnits[unit.toLowerCase()]?.into !== into)
    return { fault: `the heading gives the unit "${unit}", which is not read here` }
  switch (unit) {
    case 'in':
      return { value: rounded(number * MILLIMETRES_PER_INCH) }
    case 'psi':
      return { value: rounded(number * BAR_PER_PSI) }
    default:
      return { value: rounded(fahrenheitToCelsius(number)) }
  }
}

/** `10,000` is ten to one reader and ten thousand to another; so is `1.500` where nobody counts in thousandths. */
function unclearThousands(cell: string, step: number): string | null {
  const parts = /^([+-]?[1-9]\d{0,2})([.,])(\d{3})$/.exec(cell)
  if (!parts) return null
  const [, whole = '', mark, thousandths = ''] = parts
  if (mark === '.' && step < 1) return null
  // One decimal fewer, or it would be asked about again.
  const decimals = (step < 1 ? thousandths : thousandths.slice(0, 2)).replace(/0+$/, '') || '0'
  return `write ${whole}${thousandths} or ${whole}.${decimals}`
}

/** `12.5`, `12,5`, and for inches also `1 3/8`, `1-3/8` and `5/16`. */
function numberOf(cell: string, isInches: boolean): number | null {
  if (/^[+-]?\d+(?:[.,]\d+)?$/.test(cell)) return Number(cell.replace(',', '.'))
  const fraction = isInches ? /^(?:(\d+)[ -])?(\d+)\/([1-9]\d*)"?$/.exec(cell) : null
  return fraction ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]) : null
}

/** A converted figure keeps four decimals: a tenth of a micrometre, and no binary dust. */
function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4
}
