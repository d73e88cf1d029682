import { showLeakLosses } from '@glandkeeper/contract/leak-losses'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { leakLosses } from './show.ts'

export function leakLossRoutes(app: FastifyInstance, platform: Platform): void {
  route(app, platform, showLeakLosses, ({ me }) => leakLosses(platform.store.read, me.siteId))
}
