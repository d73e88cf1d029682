import { type InputProblem, refuse } from '../outcome.ts'

/** Between these a length is a length of some gland, in mm; beyond them somebody mistyped, and sums could overflow. */
const SHORTEST = 1e-6
const LONGEST = 100_000
/** No box holds more rings than this, nor a kit more pieces. */
const MOST_COUNTED = 10_000
/** Sums of binary fractions miss their mark by far less than this, and no rule measures it, in mm. */
export const DUST = 1e-9

type Refusal = { ok: false; problem: InputProblem }

/**
 * The first of these that is not a length a gland can have, as a problem; null when all are.
 *
 * @example firstNotLength({ boxBore: mm(45), stemDiameter: mm(0) })?.problem.code // → 'number/not-positive'
 */
export function firstNotLength(inputs: Readonly<Record<string, number>>): Refusal | null {
  for (const [field, value] of Object.entries(inputs)) {
    if (!(value > 0)) return refuse('number/not-positive', field, `${field} must be more than 0 mm, not ${value}`)
    if (!(value >= SHORTEST && value <= LONGEST)) return outOfRange(field, value, `${SHORTEST} and ${LONGEST} mm`)
  }
  return null
}

/** As `firstNotLength`, for what may also be nought: a bush that is not there, a gap that is closed. */
export function firstNotLengthOrNought(inputs: Readonly<Record<string, number>>): Refusal | null {
  for (const [field, value] of Object.entries(inputs)) {
    if (!(value >= 0)) return refuse('number/negative', field, `${field} must be 0 mm or more, not ${value}`)
    if (!(value <= LONGEST)) return outOfRange(field, value, `0 and ${LONGEST} mm`)
  }
  return null
}

/** The first of these that is not a share of a whole: 0 or more and less than 1. */
export function firstNotShare(inputs: Readonly<Record<string, number>>): Refusal | null {
  for (const [field, value] of Object.entries(inputs)) {
    if (!(value >= 0 && value < 1)) return refuse('number/not-a-share', field, `${field} must be from 0 to below 1, not ${value}`)
  }
  return null
}

/** The first of these that is not a whole number from `least` up. */
export function firstNotCount(inputs: Readonly<Record<string, number>>, least: 0 | 1 = 1): Refusal | null {
  for (const [field, value] of Object.entries(inputs)) {
    if (Number.isInteger(value) && value >= least && value <= MOST_COUNTED) continue
    return refuse('number/not-a-count', field, `${field} must be a whole number from ${least} to ${MOST_COUNTED}, not ${value}`)
  }
  return null
}

/** A length for a sentence: at most two decimals. */
export function inMillimetres(value: number): string {
  return `${Number(value.toFixed(2))} mm`
}

function outOfRange(field: string, value: number, between: string): Refusal {
  return refuse('number/out-of-range', field, `${field} must lie between ${between}, not ${value}`)
}
