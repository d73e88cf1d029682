import type { FastifyInstance } from 'fastify'
import {
  addValve as addValveEndpoint,
  changeValve as changeValveEndpoint,
  retireValve as retireValveEndpoint,
  showValve,
  type Valve,
} from '@glandkeeper/contract/valves'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read } from '../../platform/store.ts'
import { valveHistory } from './history.ts'
import { presentValve } from './present.ts'
import { addValve, changeValve, refuseImpossibleGland, retireValve } from './write.ts'

export { foldedText, flat, glandFaults, rowOf } from './write.ts'
export { presentInput, presentValve } from './present.ts'

export function valveRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showValve, ({ params, me }) => valveHistory(store.read, me.siteId, params.tag, clock()))

  route(app, platform, addValveEndpoint, async ({ body, me }) => {
    refuseImpossibleGland(body)
    await store.write((write) => addValve(write, me, body, clock()))
    return valveWithTag(store.read, me.siteId, body.tag)
  })

  route(app, platform, changeValveEndpoint, async ({ params, body, me }) => {
    refuseImpossibleGland(body.valve)
    await store.write((write) => changeValve(write, me, params.tag, body.revision, body.valve, clock()))
    return valveWithTag(store.read, me.siteId, body.valve.tag)
  })

  route(app, platform, retireValveEndpoint, async ({ params, body, me }) => {
    await store.write((write) => retireValve(write, me, params.tag, body.revision, body.reason, clock()))
    return valveWithTag(store.read, me.siteId, params.tag)
  })
}

async function valveWithTag(read: Read, siteId: string, tag: string): Promise<Valve> {
  const row = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, include: { area: true } })
  if (!row) throw new Refusal('valve/unknown', tag)
  return presentValve(row)
}
