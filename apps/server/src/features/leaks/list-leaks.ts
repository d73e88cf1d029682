import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { listLeaks } from '@glandkeeper/contract/leaks'
import { ageBands } from '@glandkeeper/engines/leak/exposure-by-age'
import { DAYS_PER_MONTH } from '@glandkeeper/engines/leak/leak-exposure'
import { addDays, days, instant } from '@glandkeeper/units/quantity'
import { addMonths } from 'date-fns/addMonths'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import type { Prisma } from '../../generated/sqlite/client.ts'
import { startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { DAYS_AFTER_OUTAGE } from '../leak-study/index.ts'
import { type LeaksWhere, pageOfLeaks, valvesOf } from './leaks-of-page.ts'
import { presentLeak } from './present-leak.ts'

type Query = QueryOf<typeof listLeaks>

/** The leaks that a filter lets through: what every number on the pages of leaks leads to. */
export async function leaksListed(read: Read, siteId: string, query: Query): Promise<OkIn<typeof listLeaks>> {
  const where = await leaksWhere(read, siteId, query)
  const { total, rows } = await pageOfLeaks(read, where, query)
  return {
    total,
    valves: await valvesOf(read, where, total),
    rows: rows.map(({ valve, ...row }) => ({
      ...presentLeak(row),
      tag: valve.tag,
      description: valve.description,
      areaCode: valve.area.code,
      service: valve.service,
    })),
  }
}

async function leaksWhere(read: Read, siteId: string, query: Query): Promise<LeaksWhere> {
  const { state, area, service, family, age, month, afterOutage, tag } = query
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const further: Prisma.LeakWhereInput[] = []
  if (tag !== undefined) further.push({ valve: { tag } })
  if (month !== undefined) further.push({ openedAt: monthAt(month, timeZone) })
  if (afterOutage !== undefined) further.push(await daysAfterOutage(read, siteId, afterOutage, timeZone))
  return {
    siteId,
    ...(area !== undefined && { areaId: await areaIdOf(read, siteId, area) }),
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

/** By its id, for which the leaks have an index; an area nobody knows has no leaks. */
export async function areaIdOf(read: Pick<Read, 'area'>, siteId: string, code: string): Promise<string> {
  const area = await read.area.findUnique({ where: { siteId_code: { siteId, code } }, select: { id: true } })
  return area?.id ?? ''
}

/** In the areas that were down; of an outage of the whole site in all. */
async function daysAfterOutage(read: Read, siteId: string, outageId: string, timeZone: string): Promise<Prisma.LeakWhereInput> {
  const outage = await read.outage.findUnique({ where: { id: outageId } })
  // One that is not over, or not of this site, is followed by nothing.
  if (!outage || outage.siteId !== siteId || outage.endedOn === null) return { id: { in: [] } }
  const from = startOfDayAt(daysAfter(outage.endedOn, 1), timeZone)
  const until = new Date(addDays(instant(from.getTime()), days(DAYS_AFTER_OUTAGE)))
  const codes = JSON.parse(outage.areaCodes) as string[]
  const areas = await read.area.findMany({ where: { siteId, code: { in: codes } }, select: { id: true } })
  return {
    openedAt: { gte: from, lt: until },
    ...(codes.length > 0 && { areaId: { in: areas.map(({ id }) => id) } }),
  }
}

function ageWhere(age: NonNullable<Query['age']>): Prisma.FloatNullableFilter | null {
  if (age === NOT_KNOWN) return null
  const place = ageBands.findIndex(({ band }) => band === age)
  const before = ageBands[place - 1]?.endsAtMonth ?? 0
  const ends = ageBands[place]?.endsAtMonth ?? null
  return { gte: before * DAYS_PER_MONTH, ...(ends !== null && { lt: ends * DAYS_PER_MONTH }) }
}
