import type { Fault } from '@glandkeeper/contract/problem'
import { ProblemError } from '../platform/client.ts'

/** The faults to show: those of the server's answer, or those found before sending. */
export function faultsTold(error: unknown, found: readonly Fault[]): readonly Fault[] {
  return error instanceof ProblemError ? (error.problem.errors ?? []) : found
}

/** What stands beside one field of a form. */
export function faultBeside(field: string, text: string, faults: readonly Fault[]): string | undefined {
  const fault = faults.find(({ pointer }) => pointer === `#/${field}`)
  return fault && (text.trim() === '' ? 'Is needed' : fault.detail)
}
