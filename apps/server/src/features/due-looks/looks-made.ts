import { setImmediate as nextTurn } from 'node:timers/promises'
import { countsAsLeak } from '@glandkeeper/engines/leak/visits'
import type { Read } from '../../platform/store.ts'
import { entriesAsTheyStand, type Said } from '../glands/index.ts'

export interface LookMade {
  readonly valveId: string
  readonly areaId: string
  readonly at: Date
  readonly isMissed: boolean
  /** A leak that is more than damp, or a stem that moves badly. */
  readonly hasFound: boolean
}

const PAGE = 2_000
const free: ReadonlySet<string> = new Set(['free', 'firm', 'not tried'])

/** What was entered since a moment, as it stands today, in order of time. */
export async function looksMade(read: Read, siteId: string, since: Date): Promise<LookMade[]> {
  const rows = []
  for (let after = ''; ;) {
    const page = await read.event.findMany({
      where: { siteId, takenAt: { gte: since }, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: PAGE,
      select: { id: true, takenAt: true, body: true, valveId: true, valve: { select: { areaId: true } } },
    })
    rows.push(...page)
    if (page.length < PAGE) break
    after = page.at(-1)?.id ?? after
    await nextTurn()
  }
  return entriesAsTheyStand(rows).map(({ row, said, takenAt }) => ({
    valveId: row.valveId,
    areaId: row.valve.areaId,
    at: takenAt,
    isMissed: said.kind === 'visit.missed',
    hasFound: foundSomething(said),
  }))
}

function foundSomething(said: Said): boolean {
  const leaks = ['leak' in said && said.leak, 'leakBefore' in said && said.leakBefore]
  return (
    leaks.some((grade) => grade && countsAsLeak(grade)) || ('stem' in said && said.stem !== undefined && !free.has(said.stem))
  )
}
