import type { FastifyInstance } from 'fastify'
import { showBoard, showBoardSummary } from '@glandkeeper/contract/board'
import { type Platform, route } from '../../platform/route.ts'
import { boardPage, boardSummary } from './queries.ts'

export { hasWords } from './queries.ts'

export function boardRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showBoard, ({ query, me }) => boardPage(store.read, me.siteId, query))
  route(app, platform, showBoardSummary, ({ me }) => boardSummary(store.read, me.siteId, clock()))
}
