import { type Outcome, refuse } from '../outcome.ts'
import { findThread, type StudThread } from './stud-threads.ts'

/**
 * The thread of this designation, with the refusal in the form every engine gives.
 *
 * @returns the thread, or `thread/unknown`
 * @example knownThread('m12 x 1.25').thread.pitch // → 1.25
 */
export function knownThread(designation: string): Outcome<{ readonly thread: StudThread }> {
  const found = findThread(designation)
  return found.ok ? found : refuse('thread/unknown', 'designation', `${designation} is not a thread we know`)
}
