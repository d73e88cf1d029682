import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { listLeaks } from '@glandkeeper/contract/leaks'
import { ageBands } from '@glandkeeper/engines/leak/exposure-by-age'
import { DAYS_PER_MONTH } from '@glandkeeper/engines/leak/leak-exposure'
import { addDays, addMonths, format, parseISO } from 'date-fns'
import type { Prisma } from '../../generated/sqlite/client.ts'
import { startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { DAYS_UNTIL_ANOTHER_LEAK } from '../glands/index.ts'
import { presentLeak } from './present-leak.ts'

type Query = QueryOf<typeof listLeaks>

const orders: Readonly<Record<Query['order'], Prisma.LeakOrderByWithRelationInput[]>> = {
  'newest first': [{ openedAt: 'desc' }, { id: 'desc' }],
  'oldest first': [{ openedAt: 'asc' }, { id: 'asc' }],
  'worst first': [{ worst: { sort: 'desc', nulls: 'last' } }, { openedAt: 'desc' }, { id: 'desc' }],
}

/** The leaks that a filter lets through: what every number on the pages of leaks leads to. */
export async function leaksListed(read: Read, siteId: string, query: Query): Promise<OkIn<typeof listLeaks>> {
  const where = await leaksWhere(read, siteId, query)
  const [total, valves, rows] = await Promise.all([
    read.leak.count({ where }),
    read.leak.groupBy({ by: ['valveId'], where }),
    read.leak.findMany({
      where,
      orderBy: orders[query.order],
      skip: query.offset,
      take: query.limit,
      include: { valve: { select: { tag: true, description: true, service: true, area: { select: { code: true } } } } },
    }),
  ])
  return {
    total,
    valves: valves.length,
    rows: rows.map(({ valve, ...row }) => ({
      ...presentLeak(row),
      tag: valve.tag,
      description: valve.description,
      areaCode: valve.area.code,
      service: valve.service,
    })),
  }
}

async function leaksWhere(read: Read, siteId: string, query: Query): Promise<Prisma.LeakWhereInput> {
  const { state, area, service, family, age, month, afterOutage, tag } = query
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const further: Prisma.LeakWhereInput[] = []
  if (area !== undefined) further.push({ valve: { area: { code: area } } })
  if (tag !== undefined) further.push({ valve: { tag } })
  if (month !== undefined) further.push({ openedAt: monthAt(month, timeZone) })
  if (afterOutage !== undefined) further.push({ openedAt: await daysAfterOutage(read, siteId, afterOutage, timeZone) })
  return {
    siteId,
    ...(state !== undefined && { state: state === 'not verified' ? { in: ['open', 'attempted'] } : state }),
    ...(service !== undefined && { service }),
    ...(family !== undefined && { family: family === NOT_KNOWN ? null : family }),
    ...(age !== undefined && { ageDays: ageWhere(age) }),
    AND: further,
  }
}

/** As the pages call a packing nobody recorded. */
const NOT_KNOWN = 'not known'

/** From the first moment of a month of the site to that of the next. */
export function monthAt(month: string, timeZone: string): { gte: Date; lt: Date } {
  const first = `${month}-01`
  const next = format(addMonths(parseISO(first), 1), 'yyyy-MM-dd')
  return { gte: startOfDayAt(first, timeZone), lt: startOfDayAt(next, timeZone) }
}

async function daysAfterOutage(read: Read, siteId: string, outageId: string, timeZone: string) {
  const outage = await read.outage.findUnique({ where: { id: outageId } })
  // One that is not over, or not of this site, is followed by nothing.
  if (!outage || outage.siteId !== siteId || outage.endedOn === null) return { in: [] }
  const from = startOfDayAt(daysAfter(outage.endedOn, 1), timeZone)
  return { gte: from, lt: addDays(from, DAYS_UNTIL_ANOTHER_LEAK) }
}

function ageWhere(age: NonNullable<Query['age']>): Prisma.FloatNullableFilter | null {
  if (age === NOT_KNOWN) return null
  const place = ageBands.findIndex(({ band }) => band === age)
  const before = ageBands[place - 1]?.endsAtMonth ?? 0
  const ends = ageBands[place]?.endsAtMonth ?? null
  return { gte: before * DAYS_PER_MONTH, ...(ends !== null && { lt: ends * DAYS_PER_MONTH }) }
}
