import {
  cancelPlanning,
  dropPlan,
  listVisits,
  makePlan,
  moveBlock,
  pinVisit,
  showMoves,
  showPlanning,
  showPlans,
  takePlan,
  unpinVisit,
} from '@glandkeeper/contract/round-plans'
import { makeRoundsOfPlan } from '@glandkeeper/contract/rounds'
import type { FastifyInstance } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { openRounds } from '../rounds/index.ts'
import { movesOf } from './moves.ts'
import { move, pin, unpin } from './pins.ts'
import { draftOf, planInUse } from './plan-in-use.ts'
import { plannedVisits } from './planned-visits.ts'
import type { Planning } from './planning.ts'
import { presentPlan } from './present.ts'
import { roundsOfPlan, writeRoundsOfPlan } from './rounds-of-plan.ts'
import { drop, take } from './take.ts'

export { planningOf } from './planning.ts'

export function roundPlanRoutes(app: FastifyInstance, platform: Platform, planning: Planning): void {
  const { store, clock } = platform
  const { read } = store
  route(app, platform, showPlans, async ({ me }) => {
    // Asked before the plans are read: one that ends meanwhile would be said to be done beside the draft before it.
    const isPlanning = planning.progressOf(me.siteId).share !== null
    const [taken, draft] = await Promise.all([planInUse(read, me.siteId), draftOf(read, me.siteId)])
    return {
      taken: taken && (await presentPlan(read, taken)),
      draft: draft && (await presentPlan(read, draft)),
      isPlanning,
    }
  })

  route(app, platform, showPlanning, async ({ me }) => planning.progressOf(me.siteId))

  route(app, platform, makePlan, async ({ body, me }) => {
    void planning.start(me, body)
    return { isPlanning: true as const }
  })

  route(app, platform, cancelPlanning, async ({ me }) => ({ wasPlanning: await planning.cancel(me.siteId) }))

  route(app, platform, takePlan, async ({ params, me }) => {
    await store.write((write) => take(write, me, params.planId, clock()))
    return { taken: true as const }
  })

  route(app, platform, dropPlan, async ({ params, me }) => {
    await store.write((write) => drop(write, me, params.planId))
    return { dropped: true as const }
  })

  route(app, platform, showMoves, async ({ params, me }) => {
    const plan = await read.roundPlan.findFirst({ where: { id: params.planId, siteId: me.siteId, summary: { not: '' } } })
    if (!plan) throw new Refusal('plan/unknown', params.planId)
    return movesOf(read, plan)
  })

  route(app, platform, listVisits, async ({ query, me }) => ({ visits: await plannedVisits(read, me.siteId, query) }))

  route(app, platform, moveBlock, async ({ params, body, me }) => ({
    moved: await store.write((write) => move(write, me, params.planId, body, clock())),
  }))

  route(app, platform, pinVisit, async ({ body, me }) => {
    await store.write((write) => pin(write, me, body, clock()))
    return { pinned: true as const }
  })

  route(app, platform, unpinVisit, async ({ body, me }) => ({
    removed: await store.write((write) => unpin(write, me, body, clock())),
  }))

  route(app, platform, makeRoundsOfPlan, async ({ body, me }) => {
    const planned = await roundsOfPlan(read, me.siteId, body)
    const ids = await store.write((write) => writeRoundsOfPlan(write, me, planned, clock()))
    const rounds = await Promise.all(ids.map((id) => openRounds(read, me.siteId, id)))
    return { rounds: rounds.flat() }
  })
}
