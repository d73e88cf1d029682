import type { Objective } from '@glandkeeper/contract/repack-plans'
import { newId } from '../../platform/ids.ts'
import { writePortions } from '../../platform/portions.ts'
import type { Store } from '../../platform/store.ts'
import type { MadeRepackPlan } from './make-repack-plan.ts'

interface PlanToKeep {
  readonly name: string
  readonly startsOn: string
  readonly weeks: number
  readonly objective: Objective
  readonly made: MadeRepackPlan
  readonly at: Date
}

/**
 * Keeps a plan beside those before it. Its summary is written last: a plan without one was cut short, is shown to
 * nobody, and goes with the next.
 *
 * @returns its id; null where it was cancelled
 */
export async function writeRepackPlan(
  store: Store,
  { siteId, personId }: { readonly siteId: string; readonly personId: string },
  { name, startsOn, weeks, objective, made, at }: PlanToKeep,
  isCancelled: () => boolean,
): Promise<string | null> {
  const id = newId()
  await store.write((write) =>
    write.repackPlan.create({
      data: { id, siteId, name, madeAt: at, madeById: personId, startsOn, weeks, objective, summary: '' },
    }),
  )
  await writePortions(store, 'planned_repack', { planId: id, portions: made.rows }, isCancelled)
  return store.write(async (write) => {
    const isKept = !isCancelled()
    if (isKept) await write.repackPlan.update({ where: { id }, data: { summary: JSON.stringify(made.summary) } })
    await write.repackPlan.deleteMany({ where: { siteId, summary: '' } })
    return isKept ? id : null
  })
}
