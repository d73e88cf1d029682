import { setImmediate as nextTurn } from 'node:timers/promises'
import { Readable } from 'node:stream'
import { parse } from 'csv-parse'
import { Refusal } from '../../platform/problem.ts'

/** One row as it stands in the file; the headings are row 1, as a spreadsheet counts. */
export interface RawRow {
  readonly row: number
  readonly cells: readonly string[]
}

const ROWS_PER_TURN = 200
const SLICE_BYTES = 64 * 1024

/** The text of a file: UTF-8, with or without a byte order mark. Anything else is refused rather than guessed. */
function textOf(content: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(content)
  } catch {
    throw new Refusal('import/not-readable', 'the file is not UTF-8: save it as "CSV UTF-8"')
  }
}

/**
 * The rows of a file, in portions, giving way to other requests in between.
 * The first portion's first row holds the headings. Rows with nothing in them are left out, and still counted.
 */
export async function* rowsOf(content: Uint8Array): AsyncGenerator<RawRow[]> {
  const text = textOf(content)
  const parser = Readable.from(slices(text)).pipe(
    parse({ delimiter: delimiterOf(text), relax_column_count: true, relax_quotes: false, skip_empty_lines: false, trim: true }),
  )
  let portion: RawRow[] = []
  let row = 0
  try {
    for await (const record of parser as AsyncIterable<string[]>) {
      row += 1
      if (record.every((cell) => cell === '')) continue
      portion.push({ row, cells: record })
      if (portion.length < ROWS_PER_TURN) continue
      yield portion
      portion = []
      await nextTurn()
    }
  } catch (error) {
    if (error instanceof Refusal) throw error
    throw new Refusal('import/not-readable', (error as Error).message)
  }
  if (portion.length > 0) yield portion
}

/** A semicolon or a tab where the headings have more of them than commas: spreadsheets differ by country. */
function delimiterOf(text: string): string {
  const headings = text.slice(0, Math.max(text.indexOf('\n'), 0) || undefined)
  const counted = [',', ';', '\t'].map((delimiter) => ({ delimiter, count: headings.split(delimiter).length }))
  return counted.reduce((most, next) => (next.count > most.count ? next : most)).delimiter
}

function* slices(text: string): Generator<string> {
  for (let at = 0; at < text.length; at += SLICE_BYTES) yield text.slice(at, at + SLICE_BYTES)
}
