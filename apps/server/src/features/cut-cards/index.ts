import type { FastifyInstance } from 'fastify'
import { printCutCard, showCutCard } from '@glandkeeper/contract/cut-cards'
import { plainLetters } from '../../platform/file-name.ts'
import { type Printer, printerIn } from '../../platform/paper/print-in-thread.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { CardToPrint } from './card-worker.ts'
import { cutCard } from './known.ts'

export { cardOf } from './card-of.ts'
export { cuttingOf } from './cutting.ts'
export { cautions } from './hazards.ts'
export { type CardFigures, notKnownOf } from './not-known.ts'
export { cardBasis, cardOfRow } from './known.ts'

export function cutCardRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  const print: Printer<CardToPrint> = printerIn(new URL('./card-worker.js', import.meta.url))
  route(app, platform, showCutCard, ({ params, me }) => cutCard(store.read, me.siteId, params.tag, clock()))
  route(app, platform, printCutCard, async ({ params, query, me, reply }) => {
    const card = await cutCard(store.read, me.siteId, params.tag, clock())
    void reply.header('content-disposition', `inline; filename="cut-card-${plainLetters(card.tag)}.pdf"`)
    return print({ card, size: query.size })
  })
}
