import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'
import { appendEvents } from '../events/index.ts'
import type { HistoryPlan } from './judge-history.ts'

/** Eleven columns an event: stays well under the number of values one statement may carry. */
const MOST_IN_A_PORTION = 500
const LEAST_IN_A_PORTION = 200

/**
 * Appends judged entries in the caller's transaction. All of them, or none when one met a change made meanwhile.
 *
 * @returns how many were in the register already, word for word
 */
export async function writeHistory(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  plans: readonly HistoryPlan[],
  now: Date,
): Promise<number> {
  const outcomes = await appendEvents(
    write,
    by,
    plans.map((plan) => plan.event),
    now,
    { keepsForecasts: false },
  )
  const refused = outcomes.find((outcome) => outcome.outcome === 'refused')
  if (refused) throw new Refusal(refused.problem.code, `${refused.problem.title}: ${refused.problem.detail ?? refused.id}`)
  return outcomes.filter((outcome) => outcome.outcome === 'already').length
}

/** Portions in which a valve's rows stand together, so that its state is made once and with its events. */
export function* wholeValves(plans: readonly HistoryPlan[]): Generator<HistoryPlan[]> {
  let portion: HistoryPlan[] = []
  const byValve = new Map<string, HistoryPlan[]>()
  for (const plan of plans) {
    const ofOneValve = byValve.get(plan.event.valveId)
    if (ofOneValve) ofOneValve.push(plan)
    else byValve.set(plan.event.valveId, [plan])
  }
  for (const ofOneValve of byValve.values()) {
    for (let at = 0; at < ofOneValve.length; at += MOST_IN_A_PORTION) {
      portion.push(...ofOneValve.slice(at, at + MOST_IN_A_PORTION))
      if (portion.length < LEAST_IN_A_PORTION) continue
      yield portion
      portion = []
    }
  }
  if (portion.length > 0) yield portion
}
