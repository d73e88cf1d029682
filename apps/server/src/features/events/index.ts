import type { FastifyInstance } from 'fastify'
import { sendEvents } from '@glandkeeper/contract/events'
import { type Platform, route } from '../../platform/route.ts'
import { acceptEvent } from './accept.ts'

export { appendEvents } from './append.ts'
export { understand } from './accept.ts'

export function eventRoutes(app: FastifyInstance, platform: Platform): void {
  route(app, platform, sendEvents, async ({ body, me, request }) => {
    const outcomes = []
    for (const raw of body.events) outcomes.push(await acceptEvent(platform, me, raw, request.log))
    return { outcomes }
  })
}
