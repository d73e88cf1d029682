import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { format, parseISO, subMonths } from 'date-fns'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { monthAt } from './list-leaks.ts'

/** Two years and the month that runs: the same month of the year before stands beside it twice. */
const MONTHS = 25

export async function leaksByMonth(
  read: Read,
  siteId: string,
  { area, service }: QueryOf<typeof showLeaksByMonth>,
  now: Date,
): Promise<OkIn<typeof showLeaksByMonth>> {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const where = {
    siteId,
    ...(service !== undefined && { service }),
    ...(area !== undefined && { valve: { area: { code: area } } }),
  }
  const thisMonth = parseISO(`${dayAt(now, timeZone).slice(0, 7)}-01`)
  const names = Array.from({ length: MONTHS }, (_, back) => format(subMonths(thisMonth, MONTHS - 1 - back), 'yyyy-MM'))
  const [open, attempted, services, ...counts] = await Promise.all([
    read.leak.count({ where: { ...where, state: 'open' } }),
    read.leak.count({ where: { ...where, state: 'attempted' } }),
    read.valve.groupBy({ by: ['service'], where: { siteId }, _count: { _all: true }, orderBy: { service: 'asc' } }),
    ...names.map((month) => read.leak.count({ where: { ...where, openedAt: monthAt(month, timeZone) } })),
  ])
  return {
    open,
    attempted,
    months: names.map((month, place) => ({ month, leaks: counts[place] ?? 0 })),
    services: services.map((row) => ({ service: row.service, valves: row._count._all })),
  }
}
