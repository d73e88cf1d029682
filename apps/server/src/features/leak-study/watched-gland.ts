import { startOfWatch } from '@glandkeeper/engines/leak/leak-exposure'
import type { Leak } from '@glandkeeper/engines/leak/leaks'
import type { StandingFact } from '@glandkeeper/engines/reserve/facts'
import type { GlandHistory } from '@glandkeeper/engines/reserve/gland-history'
import { type Celsius, type Instant, instant } from '@glandkeeper/units/quantity'
import type { EventModel, ValveModel } from '../../generated/sqlite/models.ts'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'
import { glandCourse, leaksOfGland } from '../glands/index.ts'

/** One gland with all that a study asks of it, and the time it was watched. */
export interface WatchedGland {
  readonly tag: string
  readonly service: string
  readonly areaCode: string
  readonly temperature: Celsius | null
  readonly facts: readonly StandingFact[]
  readonly history: GlandHistory
  readonly leaks: readonly Leak[]
  /** The first entry. */
  readonly from: Instant
  /** When the study was made, or the valve was retired; itself no part of the time watched. */
  readonly to: Instant
}

type EventRow = Pick<EventModel, 'id' | 'valveId' | 'kind' | 'body' | 'takenAt'>
type ValveRow = ValveModel & {
  readonly area: { readonly code: string }
  readonly monitoring: { readonly judgedFrom: number | null } | null
}

const VALVES_OF_A_PAGE = 100
const OF_VALVE = { area: { select: { code: true } }, monitoring: { select: { judgedFrom: true } } } as const
const OF_EVENT = { id: true, valveId: true, kind: true, body: true, takenAt: true } as const

/** Every valve of a site with its entries, retired ones too, page by page: so many that none is held longer than its turn. */
export async function* valvesWithEvents(
  read: Pick<Read, 'valve' | 'event'>,
  siteId: string,
): AsyncGenerator<{ readonly valve: ValveRow; readonly events: readonly EventRow[] }> {
  for (let after = ''; ;) {
    const valves = await read.valve.findMany({
      where: { siteId, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: VALVES_OF_A_PAGE,
      include: OF_VALVE,
    })
    const ids = valves.map(({ id }) => id)
    const events = await read.event.findMany({ where: { siteId, valveId: { in: ids } }, select: OF_EVENT })
    const byValve = groupedBy(events, ({ valveId }) => valveId)
    for (const valve of valves) yield { valve, events: byValve.get(valve.id) ?? [] }
    if (valves.length < VALVES_OF_A_PAGE) return
    after = ids.at(-1) ?? after
  }
}

/** Null where nobody has entered anything yet: it was not watched. */
export function watchedGland(valve: ValveRow, events: readonly EventRow[], now: Instant): WatchedGland | null {
  const { standing, history } = glandCourse(valve, events)
  const from = startOfWatch(standing, instant(0))
  if (from === null) return null
  const to = endOfWatch(valve.retiredAt, standing, now)
  if (!(to > from)) return null
  return {
    tag: valve.tag,
    service: valve.service,
    areaCode: valve.area.code,
    temperature: valve.temperatureC as Celsius | null,
    facts: standing,
    history,
    leaks: leaksOfGland(standing, valve.monitoring?.judgedFrom ?? null),
    from,
    to,
  }
}

/** A retired valve was watched until then, or until its last entry where that came later. */
function endOfWatch(retiredAt: Date | null, facts: readonly StandingFact[], now: Instant): Instant {
  if (retiredAt === null) return now
  const afterLast = (facts.at(-1)?.takenAt ?? 0) + 1
  return instant(Math.min(now, Math.max(retiredAt.getTime(), afterLast)))
}
