import type { FastifyInstance } from 'fastify'
import { showHealth } from '@glandkeeper/contract/health'
import { type Platform, route } from '../../platform/route.ts'

const VERSION = '0.1.0'

export function healthRoutes(app: FastifyInstance, platform: Platform): void {
  route(app, platform, showHealth, async () => {
    // Asked of the store and not only of the process: a server without its register is not ready.
    await platform.store.read.site.count()
    return { status: 'ready' as const, database: platform.store.provider, version: VERSION }
  })
}
