import { type Outcome, sendEvents } from '@glandkeeper/contract/events'
import { type Problem, problems } from '@glandkeeper/contract/problem'
import { call, ProblemError, Unreachable } from '../client.ts'
import { entriesIn, type OutboxDatabase, type OutboxEntry, settle } from './entries.ts'

const MOST_AT_ONCE = 100
/** The server takes up to a megabyte at once; entries with long notes stay well under it. */
const LONGEST_WAIT = 20_000

/** What the server said in this pass: for screens that are open. */
export interface Sent {
  readonly outcomes: readonly Outcome[]
  /** False: nobody answered, or nobody is signed in; try again later. */
  readonly goesOn: boolean
  readonly isSignedOut: boolean
}

/**
 * One pass through the entries of a person that wait. Callers hold the sender's lock. An entry leaves the device only
 * when the server has said `accepted` or `already`; whatever else happens, it stays.
 */
export async function sendWaiting(database: OutboxDatabase, personId: string, fetcher: typeof fetch = fetch): Promise<Sent> {
  const outcomes: Outcome[] = []
  const waiting = (await entriesIn(database)).filter((entry) => entry.state === 'waiting' && entry.personId === personId)
  for (let from = 0; from < waiting.length; from += MOST_AT_ONCE) {
    const end = await sendSlice(waiting.slice(from, from + MOST_AT_ONCE))
    if (end !== 'sent') return { outcomes, goesOn: false, isSignedOut: end === 'signed out' }
  }
  return { outcomes, goesOn: true, isSignedOut: false }

  async function sendSlice(slice: readonly OutboxEntry[]): Promise<'sent' | 'no answer' | 'signed out'> {
    const events = slice.map(({ event }) => event)
    try {
      const signal = AbortSignal.timeout(LONGEST_WAIT)
      const answer = await call(sendEvents, { body: { events }, signal }, fetcher)
      outcomes.push(...answer.outcomes)
      await settle(database, judged(slice, answer.outcomes))
      return 'sent'
    } catch (error) {
      if (!(error instanceof ProblemError)) return noAnswerOr(error)
      if (error.problem.code === 'person/not-signed-in') return 'signed out'
      // A fault of the whole batch: halved until the culprit stands alone, and the others are through.
      if (slice.length > 1) {
        const half = slice.length >> 1
        const first = await sendSlice(slice.slice(0, half))
        return first === 'sent' ? sendSlice(slice.slice(half)) : first
      }
      await settle(database, { taken: [], kept: slice.map((entry) => withProblem(entry, error.problem)) })
      return 'sent'
    }
  }
}

function noAnswerOr(error: unknown): 'no answer' {
  // The timeout ends as an abort; both mean that nobody knows whether the server has it, so it is sent again.
  if (error instanceof Unreachable || (error instanceof DOMException && error.name === 'TimeoutError')) return 'no answer'
  throw error
}

/** A refusal that may pass by itself, or a fault of the server, leaves its entry waiting; any other waits for a person. */
function withProblem(entry: OutboxEntry, problem: Problem): OutboxEntry {
  const mayPass = problems[problem.code].retry || problem.status >= 500
  return { ...entry, problem, state: mayPass ? 'waiting' : 'refused' }
}

function judged(slice: readonly OutboxEntry[], outcomes: readonly Outcome[]) {
  const byId = new Map(outcomes.map((outcome) => [outcome.id, outcome]))
  const taken: number[] = []
  const kept: OutboxEntry[] = []
  for (const entry of slice) {
    const outcome = byId.get(entry.event.id)
    if (outcome === undefined) continue
    if (outcome.outcome !== 'refused') taken.push(entry.n)
    else kept.push(withProblem(entry, outcome.problem))
  }
  return { taken, kept }
}
