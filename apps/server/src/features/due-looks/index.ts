import type { OkIn } from '@glandkeeper/contract/endpoint'
import { showDueLooks } from '@glandkeeper/contract/due-looks'
import type { FastifyInstance } from 'fastify'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import { daysAfter, mondayOf } from '../../platform/local-time.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read } from '../../platform/store.ts'
import { looksMade } from './looks-made.ts'
import { overdueLooks } from './overdue.ts'
import { walkedByWeek } from './walked.ts'

const DAYS_LOOKED_BACK = 26 * 7

export function dueLookRoutes(app: FastifyInstance, platform: Platform): void {
  route(app, platform, showDueLooks, ({ me }) => dueLooks(platform.store.read, me.siteId, platform.clock()))
}

async function dueLooks(read: Read, siteId: string, now: Date): Promise<OkIn<typeof showDueLooks>> {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const since = daysAfter(mondayOf(dayAt(now, timeZone)), -DAYS_LOOKED_BACK)
  const [areas, counts, overdue, looks] = await Promise.all([
    read.area.findMany({ where: { siteId }, orderBy: [{ walkPosition: 'asc' }, { code: 'asc' }] }),
    read.valve.groupBy({ by: ['areaId'], where: { siteId, retiredAt: null }, _count: { _all: true } }),
    overdueLooks(read, siteId, now),
    looksMade(read, siteId, startOfDayAt(since, timeZone)),
  ])
  const made = new Map<string, { looks: number; found: number }>()
  for (const { areaId, isMissed, hasFound } of looks) {
    if (isMissed) continue
    const area = made.get(areaId) ?? { looks: 0, found: 0 }
    made.set(areaId, { looks: area.looks + 1, found: area.found + (hasFound ? 1 : 0) })
  }
  return {
    overdueCount: overdue.count,
    overdue: [...overdue.looks],
    areas: areas.map(({ id, code, name }) => ({
      areaCode: code,
      areaName: name,
      valves: counts.find(({ areaId }) => areaId === id)?._count._all ?? 0,
      overdue: overdue.byArea.get(code) ?? { spent: 0, book: 0, watch: 0, ample: 0 },
      ...(made.get(id) ?? { looks: 0, found: 0 }),
    })),
    weeks: await walkedByWeek(read, siteId, { since, timeZone, looks }),
  }
}
