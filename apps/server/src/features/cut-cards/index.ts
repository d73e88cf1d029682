import type { FastifyInstance } from 'fastify'
import { printCutCard, showCutCard } from '@glandkeeper/contract/cut-cards'
import { type Platform, route } from '../../platform/route.ts'
import { cutCard } from './known.ts'
import { printedCard } from './print.ts'

export { cardOf } from './card-of.ts'
export { cautions } from './hazards.ts'

export function cutCardRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showCutCard, ({ params, me }) => cutCard(store.read, me.siteId, params.tag, clock()))
  route(app, platform, printCutCard, async ({ params, query, me, reply }) => {
    const card = await cutCard(store.read, me.siteId, params.tag, clock())
    void reply.header('content-disposition', `inline; filename="${fileName(card.tag)}"`)
    return printedCard(card, query.size)
  })
}

/** A tag may hold letters of any script and signs a file name may not: what is left of it in plain letters. */
function fileName(tag: string): string {
  return `cut-card-${tag.replaceAll(/[^A-Za-z0-9._-]+/g, '-')}.pdf`
}
