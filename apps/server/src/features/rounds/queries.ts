import type { Round, RoundStop } from '@glandkeeper/contract/rounds'
import type { SignedIn } from '../../platform/auth.ts'
import type { Read } from '../../platform/store.ts'
import { entriesAsTheyStand, type StandingEntry } from '../glands/index.ts'

/** Rounds that are not closed, with what became of each stop; one of them where its id is given. */
export async function openRounds(read: Read, siteId: string, roundId?: string): Promise<Round[]> {
  const rounds = await read.round.findMany({
    where: { siteId, closedAt: null, ...(roundId !== undefined && { id: roundId }) },
    orderBy: [{ walkOn: 'asc' }, { createdAt: 'asc' }],
    include: {
      fitter: { select: { name: true } },
      area: { select: { code: true } },
      crew: { select: { name: true } },
      stops: {
        orderBy: { position: 'asc' },
        include: { valve: { select: { tag: true, level: true, area: { select: { code: true, name: true } } } } },
      },
    },
  })
  const visits = await visitsSince(read, siteId, rounds)
  return rounds.map((round) => {
    const stops = round.stops.map(({ position, valveId, valve, addedById }) => ({
      position,
      valveId,
      tag: valve.tag,
      areaCode: valve.area.code,
      areaName: valve.area.name,
      level: valve.level,
      visit: visitAfter(visits.get(valveId) ?? [], round.createdAt),
      isAdded: addedById !== null,
    }))
    return {
      roundId: round.id,
      name: round.name,
      walkOn: round.walkOn,
      fitterId: round.fitterId,
      fitterName: round.fitter?.name ?? null,
      state: round.closedAt ? 'closed' : stops.every(({ visit }) => visit !== null) ? 'walked' : 'open',
      weekOf: round.weekOf,
      areaCode: round.area?.code ?? null,
      crewId: round.crewId,
      crewName: round.crew?.name ?? null,
      minutes: round.minutes as Round['minutes'],
      metres: round.metres as Round['metres'],
      levels: round.levels,
      stops,
    }
  })
}

/** Valves and areas of the rounds that a person walks, or that anybody may. */
export async function placesToWalk(
  read: Read,
  { siteId, personId }: Pick<SignedIn, 'siteId' | 'personId'>,
): Promise<{ readonly valveIds: ReadonlySet<string>; readonly areaIds: readonly string[] }> {
  const stops = await read.roundStop.findMany({
    where: { round: { siteId, closedAt: null, OR: [{ fitterId: null }, { fitterId: personId }] } },
    select: { valveId: true, valve: { select: { areaId: true } } },
  })
  return {
    valveIds: new Set(stops.map(({ valveId }) => valveId)),
    areaIds: [...new Set(stops.map(({ valve }) => valve.areaId))],
  }
}

type Entry = Pick<StandingEntry<unknown>, 'said' | 'takenAt'>

/** Entries of the valves of these rounds, as they stand, the newest first. */
async function visitsSince(
  read: Read,
  siteId: string,
  rounds: readonly { readonly createdAt: Date; readonly stops: readonly { readonly valveId: string }[] }[],
): Promise<Map<string, Entry[]>> {
  const valveIds = [...new Set(rounds.flatMap(({ stops }) => stops.map(({ valveId }) => valveId)))]
  if (valveIds.length === 0) return new Map()
  const earliest = new Date(Math.min(...rounds.map(({ createdAt }) => createdAt.getTime())))
  const rows = await read.event.findMany({
    where: { siteId, valveId: { in: valveIds }, takenAt: { gte: earliest } },
    select: { id: true, valveId: true, takenAt: true, body: true },
  })
  const byValve = new Map<string, Entry[]>(valveIds.map((valveId) => [valveId, []]))
  for (const { row, said, takenAt } of entriesAsTheyStand(rows).toReversed()) byValve.get(row.valveId)?.push({ said, takenAt })
  return byValve
}

function visitAfter(entries: readonly Entry[], since: Date): RoundStop['visit'] {
  const last = entries.find(({ takenAt }) => takenAt >= since)
  if (!last) return null
  const { said, takenAt } = last
  return { at: takenAt.toISOString(), kind: said.kind, missed: said.kind === 'visit.missed' ? said.reason : null }
}
