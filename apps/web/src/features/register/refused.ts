import { ProblemError } from '../../platform/client.ts'
import { faultsByField, type FieldFaults } from './valve-draft.ts'

export interface Refused {
  byField: FieldFaults
  /** What is still to be told above the button: the whole refusal, unless every fault of it stands beside a field. */
  error: unknown
}

/** A refusal of the server, taken apart for the form. */
export function problemOfForm(error: unknown): Refused {
  if (!(error instanceof ProblemError)) return { byField: {}, error }
  if (error.problem.code === 'valve/tag-taken') return { byField: { '/tag': error.problem.title }, error: null }
  const { byField, others } = faultsByField(error.problem.errors ?? [])
  const isAllTold = Object.keys(byField).length > 0 && others.length === 0 && error.problem.code === 'request/invalid'
  return { byField, error: isAllTold ? null : new ProblemError({ ...error.problem, errors: others }) }
}
