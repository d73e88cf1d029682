import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { showDueLooks } from '@glandkeeper/contract/due-looks'
import { dayAt } from '../../platform/clock.ts'
import { daysAfter, mondayOf } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import type { LookMade } from './looks-made.ts'

type Week = OkOf<typeof showDueLooks>['weeks'][number]

/** How the stops of rounds fared, by the week they were meant for: from what was entered at their valves since. */
export async function walkedByWeek(
  read: Read,
  siteId: string,
  { since, timeZone, looks }: { readonly since: string; readonly timeZone: string; readonly looks: readonly LookMade[] },
): Promise<Week[]> {
  const rounds = await read.round.findMany({
    where: { siteId, walkOn: { gte: since } },
    select: { walkOn: true, createdAt: true, closedAt: true, stops: { select: { valveId: true } } },
  })
  const byValve = new Map<string, LookMade[]>()
  for (const look of looks) byValve.set(look.valveId, [...(byValve.get(look.valveId) ?? []), look])
  const weeks = new Map<string, Week>()
  for (const { walkOn, createdAt, closedAt, stops } of rounds) {
    const weekOf = mondayOf(walkOn)
    const week = weeks.get(weekOf) ?? { weekOf, stops: 0, inTime: 0, later: 0, missed: 0 }
    for (const { valveId } of stops) {
      week.stops += 1
      const entries = (byValve.get(valveId) ?? []).filter(({ at }) => at >= createdAt && (closedAt === null || at <= closedAt))
      const visit = entries.find(({ isMissed }) => !isMissed)
      if (visit) week[dayAt(visit.at, timeZone) <= daysAfter(weekOf, 6) ? 'inTime' : 'later'] += 1
      else if (entries.length > 0) week.missed += 1
    }
    weeks.set(weekOf, week)
  }
  return [...weeks.values()].toSorted((one, other) => (one.weekOf < other.weekOf ? -1 : 1))
}
