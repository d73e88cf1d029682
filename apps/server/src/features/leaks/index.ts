import type { FastifyInstance } from 'fastify'
import { listLeaks, showLeakHistory, showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { type Platform, route } from '../../platform/route.ts'
import { leakHistory } from './leak-history.ts'
import { leaksByMonth } from './leaks-by-month.ts'
import { leaksListed } from './list-leaks.ts'

export { LeakKeeping } from './leak-keeping.ts'
export { leakHistory } from './leak-history.ts'

export function leakRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listLeaks, ({ me, query }) => leaksListed(store.read, me.siteId, query))
  route(app, platform, showLeaksByMonth, ({ me, query }) => leaksByMonth(store.read, me.siteId, query, clock()))
  route(app, platform, showLeakHistory, ({ me, params }) => leakHistory(store.read, me.siteId, params.tag, clock()))
}
