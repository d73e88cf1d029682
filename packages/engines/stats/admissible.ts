import { type InputProblem, refuse } from '../outcome.ts'

type Refusal = { ok: false; problem: InputProblem }

/** @example refusedConfidence(95)?.problem.code // → 'confidence/not-a-share' */
export function refusedConfidence(confidence: number): Refusal | null {
  if (confidence > 0 && confidence < 1) return null
  return refuse('confidence/not-a-share', 'confidence', `confidence must lie between 0 and 1, as 0.95 does, not ${confidence}`)
}

/**
 * A count is a whole number, 0 or more.
 *
 * @example refusedCount({ events: 2.5 })?.problem.code // → 'number/not-a-count'
 */
export function refusedCount(counts: Readonly<Record<string, number>>): Refusal | null {
  for (const [field, count] of Object.entries(counts)) {
    if (!(Number.isSafeInteger(count) && count >= 0))
      return refuse('number/not-a-count', field, `${field} must be a whole number, 0 or more, not ${count}`)
  }
  return null
}

/**
 * Refuses a result of which a figure is NaN or beyond the largest double: the inputs were too large or too small together.
 *
 * @example refusedFigures('points', [1, Infinity])?.problem.code // → 'number/out-of-range'
 */
export function refusedFigures(field: string, figures: readonly (number | null)[]): Refusal | null {
  if (figures.every((figure) => figure === null || Number.isFinite(figure))) return null
  return refuse('number/out-of-range', field, `${field} holds numbers too large or too small to compute with`)
}
