import { setImmediate as nextTurn } from 'node:timers/promises'
import type { FieldEvent } from '@glandkeeper/contract/events'
import type { Read } from '../../platform/store.ts'
import { howRowsStand } from '../glands/index.ts'

export interface LookMade {
  readonly valveId: string
  readonly areaId: string
  readonly at: Date
  readonly isMissed: boolean
  /** A leak that is more than damp, or a stem that moves badly. */
  readonly hasFound: boolean
}

const PAGE = 2_000
const quiet: ReadonlySet<string> = new Set(['dry', 'damp'])
const free: ReadonlySet<string> = new Set(['free', 'firm', 'not tried'])

/** What was entered since a moment and still holds, in order of time. */
export async function looksMade(read: Read, siteId: string, since: Date): Promise<LookMade[]> {
  const rows = []
  for (let after = ''; ;) {
    const page = await read.event.findMany({
      where: { siteId, takenAt: { gte: since }, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: PAGE,
      select: { id: true, kind: true, takenAt: true, body: true, valveId: true, valve: { select: { areaId: true } } },
    })
    rows.push(...page)
    if (page.length < PAGE) break
    after = page.at(-1)?.id ?? after
    await nextTurn()
  }
  const stands = howRowsStand(rows)
  return rows
    .filter(({ id, kind }) => kind !== 'fact.corrected' && stands.get(id) !== 'taken back')
    .map(({ valveId, valve, takenAt, body }) => {
      const event = JSON.parse(body) as FieldEvent
      return {
        valveId,
        areaId: valve.areaId,
        at: takenAt,
        isMissed: event.kind === 'visit.missed',
        hasFound: foundSomething(event),
      }
    })
    .toSorted((one, other) => one.at.getTime() - other.at.getTime())
}

function foundSomething(event: Readonly<Record<string, unknown>>): boolean {
  const leaks = [event['leak'], event['leakBefore']].filter((word) => typeof word === 'string')
  return leaks.some((word) => !quiet.has(word)) || (typeof event['stem'] === 'string' && !free.has(event['stem']))
}
