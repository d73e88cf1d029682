import type { RepackPlan, RepackPlanHead, RepackSlot } from '@glandkeeper/contract/repack-plans'
import type { RepackPlanModel } from '../../generated/sqlite/models.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read, Write } from '../../platform/store.ts'
import type { RepackSummary } from './make-repack-plan.ts'
import { repackPlanInUse } from './plan-in-use.ts'
import { tradeHours } from './trade-hours.ts'

type Reader = Pick<Read, 'repackPlan' | 'plannedRepack' | 'person'>

/** A plan of the site that is whole. @throws plan/unknown */
export async function repackPlanOf(
  read: Pick<Read | Write, 'repackPlan'>,
  siteId: string,
  planId: string,
): Promise<RepackPlanModel> {
  const plan = await read.repackPlan.findFirst({ where: { id: planId, siteId, summary: { not: '' } } })
  if (!plan) throw new Refusal('plan/unknown', planId)
  return plan
}

export function summaryOf(plan: RepackPlanModel): RepackSummary {
  return JSON.parse(plan.summary) as RepackSummary
}

/** Plans with what they come to, as their rows say it now. */
export async function presentHeads(read: Reader, siteId: string, plans: readonly RepackPlanModel[]): Promise<RepackPlanHead[]> {
  const ids = plans.map(({ id }) => id)
  const [sums, waiting, people, inUse] = await Promise.all([
    read.plannedRepack.groupBy({
      by: ['planId'],
      where: { planId: { in: ids } },
      _count: { _all: true },
      _sum: { chanceOut: true, expectedLeaks: true, cost: true, runningCost: true, leakCost: true, wasteCost: true },
    }),
    read.plannedRepack.groupBy({ by: ['planId'], where: { planId: { in: ids }, slotId: null }, _count: { _all: true } }),
    read.person.findMany({
      where: { id: { in: plans.flatMap(({ madeById, takenById }) => [madeById, takenById ?? madeById]) } },
      select: { id: true, name: true },
    }),
    repackPlanInUse(read, siteId),
  ])
  const nameOf = (id: string) => people.find((person) => person.id === id)?.name ?? ''
  return plans.map((plan) => {
    const { whatIf, basedOn, bound, isCutShort } = summaryOf(plan)
    const sum = sums.find(({ planId }) => planId === plan.id)
    const valves = sum?._count._all ?? 0
    const waits = waiting.find(({ planId }) => planId === plan.id)?._count._all ?? 0
    const total = sum?._sum.cost ?? 0
    return {
      planId: plan.id,
      name: plan.name,
      madeAt: plan.madeAt.toISOString(),
      madeBy: nameOf(plan.madeById),
      takenAt: plan.takenAt?.toISOString() ?? null,
      takenBy: plan.takenById && nameOf(plan.takenById),
      isInUse: plan.id === inUse?.id,
      objective: plan.objective,
      startsOn: plan.startsOn,
      weeks: plan.weeks,
      whatIf,
      basedOn,
      totals: {
        valves,
        repacks: valves - waits,
        waits,
        expectedOut: sum?._sum.chanceOut ?? 0,
        expectedLeaks: sum?._sum.expectedLeaks ?? 0,
        cost: {
          running: sum?._sum.runningCost ?? 0,
          leaks: sum?._sum.leakCost ?? 0,
          waste: sum?._sum.wasteCost ?? 0,
          total,
        },
      },
      bound,
      gap: bound > 0 ? Math.max(0, total / bound - 1) : 0,
      isCutShort,
    } as RepackPlanHead
  })
}

const NO_HOURS = { fittingHours: 0, scaffoldingHours: 0, isolatingHours: 0 }

/** A plan with its slots and what is used of their hours. */
export async function presentRepackPlan(read: Reader, plan: RepackPlanModel): Promise<RepackPlan> {
  const { greedyCost, infeasiblePins, stock, ifKept, slots } = summaryOf(plan)
  const [[head], used] = await Promise.all([
    presentHeads(read, plan.siteId, [plan]),
    read.plannedRepack.groupBy({
      by: ['slotId'],
      where: { planId: plan.id },
      _count: { _all: true },
      _sum: { fittingHours: true, scaffoldingHours: true, isolatingHours: true },
    }),
  ])
  if (!head) throw new Refusal('plan/unknown', plan.id)
  return {
    ...head,
    greedyCost,
    infeasiblePins,
    stock,
    ifKept,
    slots: slots.map((slot) => {
      const own = used.find(({ slotId }) => slotId === slot.slotId)
      return {
        ...slot,
        used: tradeHours(own?._sum ?? NO_HOURS),
        repacks: own?._count._all ?? 0,
      } as RepackSlot
    }),
  } as RepackPlan
}
