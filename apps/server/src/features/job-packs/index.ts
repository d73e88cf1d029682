import type { FastifyInstance } from 'fastify'
import { printJobPack, printOutagePack } from '@glandkeeper/contract/job-packs'
import { type Printer, printerIn } from '../../platform/paper/print-in-thread.ts'
import { plainLetters } from '../../platform/file-name.ts'
import { type Platform, route } from '../../platform/route.ts'
import { kitOf } from '../kits/index.ts'
import { originOf } from '../labels/index.ts'
import { outageToPack } from './outage-to-pack.ts'
import { packsOf } from './pack-of-valve.ts'
import type { PacksToPrint } from './print.ts'
import { valvesToPack } from './valves-to-pack.ts'

export function jobPackRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  const print: Printer<PacksToPrint> = printerIn(new URL('./pack-worker.js', import.meta.url))

  route(app, platform, printJobPack, async ({ params: { tag }, query, me: { siteId }, request, reply }) => {
    const { rows, note } = await valvesToPack(store.read, siteId, tag, query.with === 'boundary')
    const packs = await packsOf(store.read, rows, { siteId, origin: originOf(request), now: clock() })
    const printed = await print({ title: `Job pack ${tag}`, packs, note, outage: null })
    void reply.header('content-disposition', `inline; filename="job-pack-${plainLetters(tag)}.pdf"`)
    return printed
  })

  route(app, platform, printOutagePack, async ({ params: { outageId }, query: { part }, me: { siteId }, request, reply }) => {
    const now = clock()
    const { cover, rows } = await outageToPack(store.read, { siteId, outageId, part, now })
    const packs = await packsOf(store.read, rows, { siteId, origin: originOf(request), now })
    const kit = part === 1 && rows.length > 0 ? await kitOf(store.read, siteId, { outageId }, now) : null
    const title = `Job packs ${cover.name}, part ${part} of ${cover.parts}`
    const printed = await print({ title, packs, note: cover.name, outage: { ...cover, kit } })
    void reply.header('content-disposition', `inline; filename="job-packs-${plainLetters(cover.name)}-${part}.pdf"`)
    return printed
  })
}
