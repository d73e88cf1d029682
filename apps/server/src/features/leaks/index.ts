import type { FastifyInstance } from 'fastify'
import { listLeaks, printLeakHistory, showLeakHistory, showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { plainLetters } from '../../platform/file-name.ts'
import { type Platform, route } from '../../platform/route.ts'
import { type Printer, printerIn } from '../../platform/paper/print-in-thread.ts'
import { type HistoryToPrint, historyToPrint } from './history-to-print.ts'
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

  const print: Printer<HistoryToPrint> = printerIn(new URL('./history-worker.js', import.meta.url))
  route(app, platform, printLeakHistory, async ({ me, params, reply }) => {
    const known = await historyToPrint(store.read, me.siteId, params.tag, clock())
    void reply.header('content-disposition', `inline; filename="leak-history-${plainLetters(known.tag)}.pdf"`)
    return print(known)
  })
}
