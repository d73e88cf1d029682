import {
  addOutage,
  callOffOutage,
  changeOutage,
  endOutage,
  listOutages,
  type Outage,
  reviewOutage,
} from '@glandkeeper/contract/outages'
import type { FastifyInstance } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read } from '../../platform/store.ts'
import { presentOutages } from './present.ts'
import { outageReview } from './review.ts'
import { addOutageOf, callOffOutageOf, changeOutageOf, endOutageOf, outageOf } from './write.ts'

export { addOutageOf, endOutageOf } from './write.ts'

export function outageRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  const { read } = store
  route(app, platform, listOutages, async ({ me }) => {
    const rows = await read.outage.findMany({ where: { siteId: me.siteId }, orderBy: [{ likelyOn: 'asc' }, { id: 'asc' }] })
    return { outages: await presentOutages(read, me.siteId, rows) }
  })

  route(app, platform, addOutage, async ({ body, me }) => {
    const id = await store.write((write) => addOutageOf(write, me, body, clock()))
    return oneOutage(read, me.siteId, id)
  })

  route(app, platform, changeOutage, async ({ params: { outageId }, body: { revision, outage: fields }, me }) => {
    await store.write((write) => changeOutageOf(write, me, { outageId, revision, fields }, clock()))
    return oneOutage(read, me.siteId, outageId)
  })

  route(app, platform, endOutage, async ({ params: { outageId }, body, me }) => {
    await store.write((write) => endOutageOf(write, me, { outageId, ...body }, clock()))
    return oneOutage(read, me.siteId, outageId)
  })

  route(app, platform, callOffOutage, async ({ params: { outageId }, body, me }) => {
    await store.write((write) => callOffOutageOf(write, me, { outageId, ...body }, clock()))
    return oneOutage(read, me.siteId, outageId)
  })

  route(app, platform, reviewOutage, async ({ params, me }) => {
    const outage = await oneOutage(read, me.siteId, params.outageId)
    if (outage.state !== 'over' || outage.startedOn === null || outage.endedOn === null)
      throw new Refusal('outage/not-over', outage.name)
    const { startedOn, endedOn } = outage
    return { outage, ...(await outageReview(read, me.siteId, { ...outage, startedOn, endedOn }, clock())) }
  })
}

async function oneOutage(read: Read, siteId: string, outageId: string): Promise<Outage> {
  const [outage] = await presentOutages(read, siteId, [await outageOf(read, siteId, outageId)])
  if (!outage) throw new Refusal('outage/unknown', outageId)
  return outage
}
