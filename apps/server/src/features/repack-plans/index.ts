import {
  cancelRepackPlanning,
  compareRepackPlans,
  dropRepackPlan,
  listRepackPlans,
  makeRepackPlan,
  showRepackPlan,
  showRepackPlanning,
  takeRepackPlan,
} from '@glandkeeper/contract/repack-plans'
import { listPlannedRepacks } from '@glandkeeper/contract/planned-repacks'
import { moveRepack, pinRepack, unpinRepack } from '@glandkeeper/contract/repack-pins'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { comparedPlans } from './compare-repack-plans.ts'
import { dropRepackPlanOf, takeRepackPlanOf } from './keep-repack-plan.ts'
import { readMove, writeMove } from './move-repack.ts'
import { plannedRepacks } from './planned-repacks.ts'
import { presentHeads, presentRepackPlan, repackPlanOf } from './present-repack-plan.ts'
import { pinRepackOf, unpinRepackOf } from './repack-pins.ts'
import type { RepackPlanning } from './repack-planning.ts'

export { repackPlanInUse } from './plan-in-use.ts'
export { RepackPlanning } from './repack-planning.ts'
export { outageOfSlot, slotOfOutage } from './slots.ts'
export { hoursColumns, tradeHours } from './trade-hours.ts'

/** Of plans that were only tried the older ones stay on record and are not listed. */
const MOST_LISTED = 50

export function repackPlanRoutes(app: FastifyInstance, platform: Platform, planning: RepackPlanning): void {
  const { store, clock } = platform
  const { read } = store
  route(app, platform, listRepackPlans, async ({ me }) => {
    const plans = await read.repackPlan.findMany({
      where: { siteId: me.siteId, summary: { not: '' } },
      orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
      take: MOST_LISTED,
    })
    return { plans: await presentHeads(read, me.siteId, plans) }
  })

  route(app, platform, showRepackPlanning, async ({ me }) => planning.progressOf(me.siteId))

  route(app, platform, makeRepackPlan, async ({ body, me }) => {
    if (body.basedOn !== null) await repackPlanOf(read, me.siteId, body.basedOn)
    void planning.start(me, body)
    return { isPlanning: true as const }
  })

  route(app, platform, cancelRepackPlanning, async ({ me }) => ({ wasPlanning: await planning.cancel(me.siteId) }))

  route(app, platform, showRepackPlan, async ({ params, me }) =>
    presentRepackPlan(read, await repackPlanOf(read, me.siteId, params.planId)),
  )

  route(app, platform, takeRepackPlan, async ({ params, me }) => {
    await store.write((write) => takeRepackPlanOf(write, me, params.planId, clock()))
    return { taken: true as const }
  })

  route(app, platform, dropRepackPlan, async ({ params, me }) => {
    await store.write((write) => dropRepackPlanOf(write, me, params.planId))
    return { dropped: true as const }
  })

  route(app, platform, listPlannedRepacks, async ({ params, query, me }) =>
    plannedRepacks(read, await repackPlanOf(read, me.siteId, params.planId), query),
  )

  route(app, platform, moveRepack, async ({ params, body, me }) => {
    const move = await readMove(read, me.siteId, params.planId, body, clock())
    return { moved: await store.write((write) => writeMove(write, me, move, clock())) }
  })

  route(app, platform, pinRepack, async ({ body, me }) => {
    await store.write((write) => pinRepackOf(write, me, body, clock()))
    return { pinned: true as const }
  })

  route(app, platform, unpinRepack, async ({ body, me }) => ({
    removed: await store.write((write) => unpinRepackOf(write, me, body, clock())),
  }))

  route(app, platform, compareRepackPlans, async ({ params, me }) => comparedPlans(read, me.siteId, params))
}
