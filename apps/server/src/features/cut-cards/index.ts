import type { FastifyInstance } from 'fastify'
import { printCutCard, showCutCard } from '@glandkeeper/contract/cut-cards'
import { plainLetters } from '../../platform/file-name.ts'
import { type Platform, route } from '../../platform/route.ts'
import { cutCard } from './known.ts'

export { cardOf } from './card-of.ts'
export { cuttingOf } from './cutting.ts'
export { cautions } from './hazards.ts'
export { type CardFigures, notKnownOf } from './not-known.ts'
export { cardBasis, cardOfRow } from './known.ts'

export function cutCardRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showCutCard, ({ params, me }) => cutCard(store.read, me.siteId, params.tag, clock()))
  route(app, platform, printCutCard, async ({ params, query, me, reply }) => {
    const card = await cutCard(store.read, me.siteId, params.tag, clock())
    void reply.header('content-disposition', `inline; filename="cut-card-${plainLetters(card.tag)}.pdf"`)
    // Fonts and all of the printing: a fifth of a second that no start waits for.
    const { printedCard } = await import('../card-sheets/index.ts')
    return printedCard(card, query.size)
  })
}
