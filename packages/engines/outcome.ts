import { nameInWords } from '@glandkeeper/units/format'

/** Why nothing was computed: which input is at fault, by a code for programs and a sentence for people. */
export interface InputProblem {
  readonly code: `${string}/${string}`
  /** Name of the input at fault. */
  readonly field: string
  readonly detail: string
}

/** What an engine gives back: its figures, or the named problem with what it was given. Never NaN. */
export type Outcome<Figures extends object> =
  | (Readonly<Figures> & { readonly ok: true })
  | { readonly ok: false; readonly problem: InputProblem }

/** @example refuse('gland/no-space', 'boxBore', 'too narrow').ok // → false */
export function refuse(code: InputProblem['code'], field: string, detail: string): { ok: false; problem: InputProblem } {
  return { ok: false, problem: { code, field, detail } }
}

/**
 * The first of these inputs that is not a number above nought, as a problem; null when all are.
 *
 * @example firstNotPositive({ boxBore: mm(45), stemDiameter: mm(0) })?.problem.field // → 'stemDiameter'
 */
export function firstNotPositive(inputs: Readonly<Record<string, number>>): { ok: false; problem: InputProblem } | null {
  for (const [field, value] of Object.entries(inputs)) {
    if (!(value > 0 && value < Infinity))
      return refuse('number/not-positive', field, `${nameInWords(field)} must be more than 0, not ${value}`)
  }
  return null
}
