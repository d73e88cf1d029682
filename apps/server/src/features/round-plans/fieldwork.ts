import { addWeeks } from 'date-fns/addWeeks'
import { parseISO } from 'date-fns/parseISO'
import type { Read } from '../../platform/store.ts'
import { openRounds } from '../rounds/index.ts'
import { weekIndexOf } from './weeks.ts'

/** What rounds that are made mean for the plan, by valve. */
export interface Fieldwork {
  /** Valves on a round nobody has walked to them yet: week and crew stay. */
  readonly onRound: ReadonlyMap<string, { readonly week: number; readonly crewId: string }>
  /** Valves that a round came back without, and that nobody has seen since. */
  readonly missed: ReadonlySet<string>
}

/** A round left longer ago than this says nothing of today. */
const WEEKS_TO_LOOK_BACK = 12

export async function readFieldwork(read: Read, siteId: string, startsOn: string): Promise<Fieldwork> {
  const onRound = new Map<string, { week: number; crewId: string }>()
  const missed = new Set<string>()
  for (const { weekOf, crewId, stops } of await openRounds(read, siteId)) {
    for (const { valveId, visit } of stops) {
      if (visit?.missed) missed.add(valveId)
      else if (visit === null && weekOf !== null && crewId !== null)
        onRound.set(valveId, { week: Math.max(0, weekIndexOf(weekOf, startsOn)), crewId })
    }
  }
  for (const valveId of await missedOnClosedRounds(read, siteId, startsOn)) if (!onRound.has(valveId)) missed.add(valveId)
  return { onRound, missed }
}

/** Of each valve the last closed round counts: it was left out there when nobody has seen the gland since it was made. */
async function missedOnClosedRounds(read: Read, siteId: string, startsOn: string): Promise<Set<string>> {
  const rounds = await read.round.findMany({
    where: { siteId, closedAt: { gte: addWeeks(parseISO(startsOn), -WEEKS_TO_LOOK_BACK) } },
    orderBy: { createdAt: 'asc' },
    select: {
      createdAt: true,
      stops: {
        where: { valve: { retiredAt: null } },
        select: { valveId: true, valve: { select: { state: { select: { lastSeenAt: true } } } } },
      },
    },
  })
  const missed = new Set<string>()
  for (const { createdAt, stops } of rounds) {
    for (const { valveId, valve } of stops) {
      const seen = valve.state?.lastSeenAt ?? null
      if (seen !== null && seen >= createdAt) missed.delete(valveId)
      else missed.add(valveId)
    }
  }
  return missed
}
