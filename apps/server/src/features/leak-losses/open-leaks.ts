import type { Correlation } from '@glandkeeper/contract/leak-rules'
import type { LeakGrade } from '@glandkeeper/contract/events'
import type { Read } from '../../platform/store.ts'
import { gradesRising } from '@glandkeeper/engines/reserve/facts'
import { fieldsOfRule, type StandingSighting } from '../leak-rules/index.ts'
import { lastFigures } from './last-figures.ts'

/** What a loss is worked out from, of one leak that stands open. */
export interface OpenLeak {
  readonly leakId: string
  readonly valve: Awaited<ReturnType<typeof rowsOf>>[number]['valve']
  readonly grade: LeakGrade | null
  readonly correlation: Correlation
  /** The last that gave a figure while it leaked; null where none did. */
  readonly sighting: StandingSighting | null
}

/** More than these are counted, and not worked out. */
const MOST_LEAKS = 2000

/** Leaks nobody has seen gone, the worst first; those of retired valves lose nothing any more. */
export async function openLeaks(
  read: Read,
  siteId: string,
): Promise<{ readonly leaks: readonly OpenLeak[]; readonly beyond: number }> {
  const where = { siteId, state: { in: ['open', 'attempted'] }, valve: { retiredAt: null } }
  const [rows, total] = await Promise.all([rowsOf(read, where), read.leak.count({ where })])
  const figures = await lastFigures(
    read,
    siteId,
    rows.map(({ valveId, openedAt, valve }) => ({ valveId, openedAt, judgedFrom: valve.monitoring?.judgedFrom ?? null })),
  )
  const leaks = rows.map(({ id, valveId, worst, valve }) => ({
    leakId: id,
    valve,
    grade: worst === null ? null : (gradesRising[worst] ?? null),
    correlation: valve.monitoring?.rule ? fieldsOfRule(valve.monitoring.rule).correlation : ELSE,
    sighting: figures.get(valveId) ?? null,
  }))
  return { leaks, beyond: total - rows.length }
}

/** Where no rule names one. Set by us. */
const ELSE: Correlation = 'petroleum industry valve'

function rowsOf(read: Read, where: object) {
  return read.leak.findMany({
    where,
    orderBy: [{ worst: { sort: 'desc', nulls: 'last' } }, { openedAt: 'asc' }, { id: 'asc' }],
    take: MOST_LEAKS,
    include: {
      valve: {
        select: {
          tag: true,
          description: true,
          service: true,
          fluid: true,
          phase: true,
          temperatureC: true,
          pressureBar: true,
          area: { select: { code: true, name: true } },
          monitoring: { select: { judgedFrom: true, rule: { select: { name: true, body: true } } } },
        },
      },
    },
  })
}
