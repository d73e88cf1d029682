import { exportLog, type LogRow, showLog } from '@glandkeeper/contract/log'
import type { FastifyInstance } from 'fastify'
import { dayAt } from '../../platform/clock.ts'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { csvOf } from '../../platform/spreadsheet.ts'
import type { Store } from '../../platform/store.ts'
import { countOf, type Filters, logPage, wholeLog } from './read.ts'

const MOST_ROWS = 100_000

export function logRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, showLog, ({ query, me }) => logPage(store, me.siteId, query))

  route(app, platform, exportLog, async ({ query, me, reply }) => {
    const csv = await logCsv(store, me.siteId, query)
    const { timeZone } = await store.read.site.findUniqueOrThrow({ where: { id: me.siteId }, select: { timeZone: true } })
    void reply.header('content-disposition', `attachment; filename="log-${dayAt(clock(), timeZone)}.csv"`)
    return csv
  })
}

const headings = ['at', 'who', 'about', 'name', 'what', 'field', 'before', 'after']

/** One row for each field that changed, so that a spreadsheet can sort by it. Read in pages: between them others are served. */
async function logCsv(store: Store, siteId: string, filters: Filters): Promise<string> {
  const count = await countOf(store, siteId, filters)
  if (count > MOST_ROWS) throw new Refusal('evidence/too-much', `${count} changes`)
  const parts = [csvOf([], headings)]
  for await (const rows of wholeLog(store, siteId, filters)) parts.push(csvOf(rows.flatMap(linesOf), null))
  return parts.join('')
}

function linesOf({ at, by, subject, name, what, changes }: LogRow): string[][] {
  const first = [at, by, subject, name, what]
  if (changes.length === 0) return [[...first, '', '', '']]
  return changes.map(({ field, before, after }) => [...first, field, before, after])
}
