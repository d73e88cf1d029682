import { nutTurns } from '@glandkeeper/contract/events'
import { gap } from '@glandkeeper/contract/reserve'
import { readMeasure } from '@glandkeeper/units/read-measure'
import { figureOf, type GapUnit, millimetresOf, turnsOf } from '../readings/index.ts'

export type FigureRead = { readonly value: number | null } | { readonly fault: string }

/** A figure and how it was counted: `3f` are three flats, `2q` two quarter turns. */
const COUNTED = /^([-−+]?[\d.,]+)\s*([fq])$/i

/** Turns of a nut as they stand on paper: `1/2`, `0.5`, `½`, `3f`, `2q`. */
export function turnsIn(text: string): FigureRead {
  if (text.trim() === '') return { value: null }
  const value = turnsFrom(text.trim())
  if (value === null || Number.isNaN(value)) return { fault: 'Write turns as 1/2, 0.5, 3f for flats or 2q for quarters.' }
  return judged(nutTurns, value)
}

function turnsFrom(text: string): number | null {
  const counted = COUNTED.exec(text)
  if (counted)
    return turnsOf(figureOf(counted[1] ?? '') ?? Number.NaN, counted[2]?.toLowerCase() === 'f' ? 'flats' : 'quarter turns')
  const read = readMeasure(text, 'turn')
  return read.ok ? read.value : null
}

/** A gap in the unit this device reads gaps in. */
export function gapIn(text: string, unit: GapUnit): FigureRead {
  const value = millimetresOf(figureOf(text), unit)
  if (value === null) return { value }
  if (Number.isNaN(value)) return { fault: 'Write a figure, such as 7.4.' }
  return judged(gap, value)
}

function judged(quantity: typeof gap | typeof nutTurns, value: number): FigureRead {
  const { error } = quantity.safeParse(value)
  return error ? { fault: `${error.issues.map(({ message }) => message).join(' ')}.` } : { value }
}
