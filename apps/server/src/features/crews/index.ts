import { addCrew, changeAreaWalk, changeCrew, listAreaWalks, listCrews, retireCrew } from '@glandkeeper/contract/crews'
import type { FastifyInstance } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { areaWalksOf, changeWalkOf } from './area-walks.ts'
import { changeCrewOf, createCrew, crewsOf, retireCrewOf } from './keep.ts'

export { changeWalkOf, walkPlanOf } from './area-walks.ts'
export { createCrew, crewOf, skillsOf } from './keep.ts'

export function crewRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  const shown = async (siteId: string, crewId: string) => {
    const crew = (await crewsOf(store.read, siteId)).find((one) => one.crewId === crewId)
    if (!crew) throw new Refusal('crew/unknown', crewId)
    return crew
  }
  route(app, platform, listCrews, async ({ me }) => ({ crews: await crewsOf(store.read, me.siteId) }))

  route(app, platform, addCrew, async ({ body, me }) => {
    const crewId = await store.write((write) => createCrew(write, me, body, clock()))
    return shown(me.siteId, crewId)
  })

  route(app, platform, changeCrew, async ({ params, body, me }) => {
    await store.write((write) => changeCrewOf(write, me, params.crewId, body, clock()))
    return shown(me.siteId, params.crewId)
  })

  route(app, platform, retireCrew, async ({ params, me }) => {
    await store.write((write) => retireCrewOf(write, me, params.crewId, clock()))
    return { retired: true as const }
  })

  route(app, platform, listAreaWalks, async ({ me }) => ({ walks: await areaWalksOf(store.read, me.siteId) }))

  route(app, platform, changeAreaWalk, async ({ params, body, me }) => {
    await store.write((write) => changeWalkOf(write, me, params.code, body, clock()))
    const walk = (await areaWalksOf(store.read, me.siteId)).find(({ areaCode }) => areaCode === params.code)
    if (!walk) throw new Refusal('area/unknown', params.code)
    return walk
  })
}
