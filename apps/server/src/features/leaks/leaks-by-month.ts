import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { LeakState, showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import { subMonths } from 'date-fns/subMonths'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { areaIdOf, monthAt } from './list-leaks.ts'

/** Two years and the month that runs: the same month of the year before stands beside it twice. */
const MONTHS = 25

export async function leaksByMonth(
  read: Read,
  siteId: string,
  { area, service }: QueryOf<typeof showLeaksByMonth>,
  now: Date,
): Promise<OkIn<typeof showLeaksByMonth>> {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const areaId = area === undefined ? null : await areaIdOf(read, siteId, area)
  const where = {
    siteId,
    ...(service !== undefined && { service }),
    ...(areaId !== null && { areaId }),
  }
  const thisMonth = parseISO(`${dayAt(now, timeZone).slice(0, 7)}-01`)
  const names = Array.from({ length: MONTHS }, (_, back) => format(subMonths(thisMonth, MONTHS - 1 - back), 'yyyy-MM'))
  const [states, services, ...counts] = await Promise.all([
    // By service, whichever is asked for: narrowed to one, all its leaks of ever would be gone through for the few that are open.
    read.leak.groupBy({
      by: ['state', 'service'],
      where: { siteId, ...(areaId !== null && { areaId }), state: { in: ['open', 'attempted'] } },
      _count: { _all: true },
    }),
    read.valve.groupBy({ by: ['service'], where: { siteId }, _count: { _all: true }, orderBy: { service: 'asc' } }),
    ...names.map((month) => read.leak.count({ where: { ...where, openedAt: monthAt(month, timeZone) } })),
  ])
  const standing = (state: LeakState) =>
    states
      .filter((row) => row.state === state && (service === undefined || row.service === service))
      .reduce((sum, { _count }) => sum + _count._all, 0)
  return {
    open: standing('open'),
    attempted: standing('attempted'),
    months: names.map((month, place) => ({ month, leaks: counts[place] ?? 0 })),
    services: services.map((row) => ({ service: row.service, valves: row._count._all })),
  }
}
