import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import { repackPlanInUse } from './plan-in-use.ts'
import { repackPlanOf, summaryOf } from './present-repack-plan.ts'

/** From now on this is the plan in use. */
export async function takeRepackPlanOf(write: Write, by: SignedIn, planId: string, now: Date): Promise<void> {
  const plan = await repackPlanOf(write, by.siteId, planId)
  if (plan.takenAt) throw new Refusal('repack/plan-in-use', plan.name)
  if (summaryOf(plan).whatIf !== null) throw new Refusal('repack/only-a-question', plan.name)
  const before = await repackPlanInUse(write, by.siteId)
  await write.repackPlan.update({ where: { id: planId }, data: { takenAt: now, takenById: by.personId } })
  await noteChange(
    write,
    by,
    {
      subject: 'repack plan',
      subjectId: planId,
      what: 'plan of repacks taken',
      before: { plan: before?.name ?? null },
      after: { plan: plan.name },
    },
    now,
  )
}

/** Throws a plan away that nobody has taken; one that was taken stays on record. */
export async function dropRepackPlanOf(write: Write, { siteId }: SignedIn, planId: string): Promise<void> {
  const plan = await repackPlanOf(write, siteId, planId)
  if (plan.takenAt) throw new Refusal('repack/plan-in-use', plan.name)
  await write.repackPlan.delete({ where: { id: planId } })
}
