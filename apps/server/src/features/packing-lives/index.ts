import { comparePackings } from '@glandkeeper/contract/packing-lives'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import type { LeakStudies } from '../leak-study/index.ts'
import { packingsCompared } from './packings-compared.ts'

export function packingLifeRoutes(app: FastifyInstance, platform: Platform, studies: Pick<LeakStudies, 'startFirst'>): void {
  const { read } = platform.store
  route(app, platform, comparePackings, async ({ me, query }) => {
    const compared = await packingsCompared(read, me.siteId, query)
    if (compared.madeAt === null) await studies.startFirst(me.siteId)
    return compared
  })
}
