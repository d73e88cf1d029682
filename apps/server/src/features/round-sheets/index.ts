import type { FastifyInstance } from 'fastify'
import { printRound, showCarry } from '@glandkeeper/contract/rounds'
import { type Platform, route } from '../../platform/route.ts'
import { carryInWords } from './carry-in-words.ts'
import { type RoundSheet, roundSheet } from './known.ts'
import { type Printer, printerIn } from '../../platform/paper/print-in-thread.ts'

export function roundSheetRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showCarry, async ({ params, me }) => {
    const { toCarry } = await roundSheet(store.read, me.siteId, params.roundId, clock())
    return { lines: carryInWords(toCarry).map(({ name, says }) => ({ name, says })) }
  })

  const print: Printer<RoundSheet> = printerIn(new URL('./sheet-worker.js', import.meta.url))
  route(app, platform, printRound, async ({ params, me, reply }) => {
    const sheet = await roundSheet(store.read, me.siteId, params.roundId, clock())
    void reply.header('content-disposition', `inline; filename="round-${sheet.walkOn}.pdf"`)
    return print(sheet)
  })
}
