import type { QueryOf } from '@glandkeeper/contract/endpoint'
import { showStockOutlook } from '@glandkeeper/contract/stores'
import { showKit } from '@glandkeeper/contract/kits'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { kitOf } from './kit.ts'
import { stockOutlook } from './outlook.ts'
import type { KitFor } from './valves-of-kit.ts'

export { kitOf } from './kit.ts'

export function kitRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showKit, ({ query, me }) => kitOf(store.read, me.siteId, kitForOf(query), clock()))
  route(app, platform, showStockOutlook, ({ me }) => stockOutlook(store.read, me.siteId, clock()))
}

/** The contract lets exactly one of the three in. */
function kitForOf({ tag, outageId, roundId }: QueryOf<typeof showKit>): KitFor {
  if (tag !== undefined) return { tag }
  return outageId === undefined ? { roundId: roundId ?? '' } : { outageId }
}
