import { nameInWords } from '@glandkeeper/units/format'
import { type InputProblem, refuse } from '../outcome.ts'

type Refusal = { readonly ok: false; readonly problem: InputProblem }

/** The largest double is 1.8e308: figures that overflow are refused by the input that is to blame. */
export function firstOutOfRange(field: string, ...results: readonly number[]): Refusal | null {
  if (results.every((result) => Number.isFinite(result))) return null
  return refuse('number/out-of-range', field, 'the figures given lead to a result too large to compute')
}

/** The first of these inputs that is negative or no number; nought is allowed. */
export function firstNegative(inputs: Readonly<Record<string, number>>): Refusal | null {
  for (const [field, value] of Object.entries(inputs)) {
    if (!(value >= 0 && value < Infinity))
      return refuse('number/negative', field, `${nameInWords(field)} must be 0 or more, not ${value}`)
  }
  return null
}

/** Studs, nuts and rings are counted, not measured. */
export function notACount(field: string, count: number): Refusal | null {
  if (Number.isSafeInteger(count) && count > 0) return null
  return refuse('count/not-whole', field, `${nameInWords(field)} must be a whole number of at least 1, not ${count}`)
}
