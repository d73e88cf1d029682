import type { FastifyInstance } from 'fastify'
import { addFamily, advisePacking, changeFamily, listFamilies, type SiteFamily } from '@glandkeeper/contract/packings'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read } from '../../platform/store.ts'
import { adviceFor } from './advice.ts'
import { siteFamilies } from './read.ts'
import { addToSite, changeInSite } from './write.ts'

export { siteFamilies } from './read.ts'

export function packingRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listFamilies, async ({ me }) => ({ families: await siteFamilies(store.read, me.siteId) }))

  route(app, platform, addFamily, async ({ body, me }) => {
    await store.write((write) => addToSite(write, me, body, clock()))
    return familyNamed(store.read, me.siteId, body.name)
  })

  route(app, platform, changeFamily, async ({ params, body, me }) => {
    await store.write((write) => changeInSite(write, me, params.family, body, clock()))
    return familyNamed(store.read, me.siteId, params.family)
  })

  route(app, platform, advisePacking, ({ params, me }) => adviceFor(store.read, me.siteId, params.tag))
}

async function familyNamed(read: Read, siteId: string, name: string): Promise<SiteFamily> {
  const found = (await siteFamilies(read, siteId)).find((family) => family.name === name)
  if (!found) throw new Refusal('packing/unknown', name)
  return found
}
