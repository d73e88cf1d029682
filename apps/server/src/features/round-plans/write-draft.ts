import { newId } from '../../platform/ids.ts'
import { writePortions } from '../../platform/portions.ts'
import type { Store } from '../../platform/store.ts'
import type { MadePlan } from './make-round-plan.ts'

interface Draft {
  readonly startsOn: string
  readonly weeks: number
  readonly made: MadePlan
  readonly at: Date
}

/**
 * Keeps a draft in place of the one before. Its summary is written last: a draft without one was cut short, is shown to
 * nobody, and goes with the next.
 */
export async function writeDraft(
  store: Store,
  { siteId, personId }: { readonly siteId: string; readonly personId: string },
  { startsOn, weeks, made, at }: Draft,
  isCancelled: () => boolean,
): Promise<void> {
  const id = newId()
  await store.write((write) =>
    write.roundPlan.create({ data: { id, siteId, madeAt: at, madeById: personId, startsOn, weeks, summary: '' } }),
  )
  await writePortions(store, 'planned_visit', { planId: id, portions: made.visits }, isCancelled)
  await store.write(async (write) => {
    if (!isCancelled()) await write.roundPlan.update({ where: { id }, data: { summary: JSON.stringify(made.summary) } })
    await write.roundPlan.deleteMany({ where: { siteId, takenAt: null, ...(!isCancelled() && { id: { not: id } }) } })
  })
}
