import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'
import { appendEvents } from '../events/index.ts'
import type { HistoryPlan } from './judge-history.ts'

/** Appends judged entries in the caller's transaction. All of them, or none when one met a change made meanwhile. */
export async function writeHistory(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  plans: readonly HistoryPlan[],
  now: Date,
): Promise<void> {
  const outcomes = await appendEvents(
    write,
    by,
    plans.map((plan) => plan.event),
    now,
  )
  const refused = outcomes.find((outcome) => outcome.outcome === 'refused')
  if (refused) throw new Refusal(refused.problem.code, `${refused.problem.title}: ${refused.problem.detail ?? refused.id}`)
}
