import type { FastifyInstance } from 'fastify'
import { showPocket } from '@glandkeeper/contract/pocket'
import { type Platform, route } from '../../platform/route.ts'
import { pocketPage } from './pages.ts'

export function pocketRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showPocket, ({ query, me }) => pocketPage(store.read, me, query, clock()))
}
