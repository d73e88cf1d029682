import { TZDate } from '@date-fns/tz'
import { entryWords, headingUnits, type ImportColumn } from '@glandkeeper/contract/import-columns'
import { BAR_PER_PSI, fahrenheitToCelsius, MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'

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
      return quantityOf(cell, unit ?? reads.unit, reads.unit)
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
  const kind = entryWords[cell.toLowerCase()]
  return kind === undefined ? { fault: `not one of: ${Object.keys(entryWords).join(', ')}` } : { value: kind }
}

/** ISO 8601. A day without a time is taken as noon at the site, a time without an offset as the site's. */
function momentOf(cell: string, timeZone: string): CellReading {
  const parts = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*(Z|[+-]\d{2}:?\d{2})?)?$/.exec(cell)
  if (!parts) return { fault: 'write the date as 2026-05-04, or 2026-05-04 14:30' }
  const [year, month, day, hour, minute, second] = parts
    .slice(1, 7)
    .map((part) => (part === undefined ? undefined : Number(part)))
  const offset = parts[7]
  if (offset !== undefined) {
    const moment = new Date(cell.replace(' ', 'T').replace(/\s+/, ''))
    return isNaN(moment.getTime()) ? { fault: 'no such date' } : { value: moment.toISOString() }
  }
  const local = new TZDate(year ?? 0, (month ?? 1) - 1, day ?? 1, hour ?? 12, minute ?? 0, second ?? 0, timeZone)
  // 31 June rolls over to July; what was written is then not what would be kept.
  if (local.getMonth() !== (month ?? 0) - 1 || local.getDate() !== day || (hour ?? 0) > 23) return { fault: 'no such date' }
  return { value: new Date(local.getTime()).toISOString() }
}

function quantityOf(cell: string, unit: string, into: string): CellReading {
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
