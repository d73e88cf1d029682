import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import type { PlanSummary } from './make-round-plan.ts'
import { pinsAsOf } from './pins.ts'
import { planInUse } from './plan-in-use.ts'

/** From now on the draft is the plan in use. Refused when another was taken, or the one in use was moved, since it was made. */
export async function take(write: Write, by: SignedIn, planId: string, now: Date): Promise<void> {
  const { siteId, personId } = by
  const plan = await write.roundPlan.findFirst({ where: { id: planId, siteId, summary: { not: '' } } })
  if (!plan) throw new Refusal('plan/unknown', planId)
  if (plan.takenAt) throw new Refusal('plan/not-a-draft', planId)
  const inUse = await planInUse(write, siteId)
  const { basedOn, pins } = JSON.parse(plan.summary) as PlanSummary
  const isMovedSince = (inUse?.id ?? null) !== basedOn || (await pinsAsOf(write, siteId)) !== pins
  if (isMovedSince) throw new Refusal('plan/out-of-date', planId)
  await write.roundPlan.update({ where: { id: planId }, data: { takenAt: now, takenById: personId } })
  await noteChange(
    write,
    by,
    {
      subject: 'plan',
      subjectId: planId,
      what: 'plan of rounds taken',
      before: { startsOn: inUse?.startsOn ?? null },
      after: { startsOn: plan.startsOn },
    },
    now,
  )
}

/** Throws a draft away; a plan that was taken stays on record. */
export async function drop(write: Write, { siteId }: SignedIn, planId: string): Promise<void> {
  const plan = await write.roundPlan.findFirst({ where: { id: planId, siteId } })
  if (!plan) throw new Refusal('plan/unknown', planId)
  if (plan.takenAt) throw new Refusal('plan/not-a-draft', planId)
  await write.roundPlan.delete({ where: { id: planId } })
}
