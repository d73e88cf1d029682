import { printLabels } from '@glandkeeper/contract/labels'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { type Printer, printerIn } from '../../platform/paper/print-in-thread.ts'
import type { LabelsToPrint } from './sheets.ts'
import { labelsOf } from './which.ts'

export { addressOf } from './which.ts'

export function labelRoutes(app: FastifyInstance, platform: Platform): void {
  const print: Printer<LabelsToPrint> = printerIn(new URL('./labels-worker.js', import.meta.url))
  route(app, platform, printLabels, async ({ query: { size, ...wanted }, me, request, reply }) => {
    const labels = await labelsOf(platform.store.read, me.siteId, wanted, originOf(request))
    const printed = await print({ labels, size })
    void reply.header('content-disposition', `inline; filename="labels-${wanted.area ?? 'valves'}.pdf"`)
    return printed
  })
}

/** Where the person asking has found this server, and a phone will: behind a proxy, what the proxy was asked. */
export function originOf({ protocol, host }: FastifyRequest): string {
  const address = `${protocol}://${host}`
  if (!URL.canParse(address)) throw new Refusal('request/malformed', 'the request names no host')
  return new URL(address).origin
}
