import type { VisitSpan } from '@glandkeeper/engines/leak/interval'
import { visitsOf } from '@glandkeeper/engines/leak/visits'
import { wearLives } from '@glandkeeper/engines/reserve/wear-lives'
import type { FitLife } from '@glandkeeper/engines/wear/fit-lives'
import type { Read } from '../../platform/store.ts'
import { glandCourse, groupOf } from '../glands/index.ts'

/** All packing lives of a site, finished and present, and all looks at whether a gland leaked. */
export interface LivesOfSite {
  readonly lives: readonly FitLife[]
  /** By group, one list of spans for each valve. */
  readonly visits: ReadonlyMap<string, readonly (readonly VisitSpan[])[]>
}

const PAGE = 200
const FOR_COURSE = { id: true, kind: true, body: true, takenAt: true } as const

/** Retired valves too: leaving them out would leave out the short lives. */
export async function livesOfSite(read: Pick<Read, 'valve' | 'event'>, siteId: string): Promise<LivesOfSite> {
  const lives: FitLife[] = []
  const visits = new Map<string, (readonly VisitSpan[])[]>()
  for (let after = ''; ;) {
    const valves = await read.valve.findMany({ where: { siteId, id: { gt: after } }, orderBy: { id: 'asc' }, take: PAGE })
    for (const valve of valves) {
      const events = await read.event.findMany({ where: { siteId, valveId: valve.id }, select: FOR_COURSE })
      const { gland, history, standing } = glandCourse(valve, events)
      const own = wearLives(gland, history)
      for (const { record, family } of own) lives.push({ group: groupOf(valve.service, family), valve: valve.id, life: record })
      const { spans } = visitsOf(standing)
      const group = groupOf(valve.service, own.at(-1)?.family ?? null)
      visits.set(group, [...(visits.get(group) ?? []), spans])
    }
    if (valves.length < PAGE) return { lives, visits }
    after = valves.at(-1)?.id ?? after
  }
}
