import type { InputProblem } from '@glandkeeper/engines/outcome'

interface Refused {
  readonly ok: false
  readonly problem: InputProblem
}

/**
 * The same refusal, with the engine's name of the input turned into the calculator's.
 *
 * @example at({ ok: false, problem: { code: 'thread/unknown', field: 'designation', detail: '' } }, { designation: 'studThread' }).problem.field // → 'studThread'
 */
export function at({ problem }: Refused, names: Readonly<Record<string, string>>): Refused {
  return { ok: false, problem: { ...problem, field: names[problem.field] ?? problem.field } }
}
