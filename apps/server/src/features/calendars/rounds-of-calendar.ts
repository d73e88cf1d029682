import type { Read } from '../../platform/store.ts'
import type { RoundInFeed } from './feed.ts'

const WEEKS_SHOWN_CLOSED = 8
const WEEK = 7 * 86_400_000

/** Rounds of a crew, or of the whole site, that are not closed or were so a short while ago. */
export async function roundsOfCalendar(
  read: Read,
  { siteId, crewId }: { readonly siteId: string; readonly crewId: string | null },
  now: Date,
): Promise<RoundInFeed[]> {
  const rounds = await read.round.findMany({
    where: {
      siteId,
      ...(crewId !== null && { crewId }),
      OR: [{ closedAt: null }, { closedAt: { gte: new Date(now.getTime() - WEEKS_SHOWN_CLOSED * WEEK) } }],
    },
    orderBy: [{ walkOn: 'asc' }, { createdAt: 'asc' }, { id: 'asc' }],
    include: {
      area: { select: { name: true } },
      fitter: { select: { name: true } },
      stops: { orderBy: { position: 'asc' }, select: { valve: { select: { area: { select: { name: true } } } } } },
    },
  })
  return rounds.map(({ id, name, walkOn, area, fitter, stops, minutes, createdAt, closedAt }) => ({
    id,
    name,
    walkOn,
    stopCount: stops.length,
    areaNames: area ? [area.name] : [...new Set(stops.map(({ valve }) => valve.area.name))],
    fitterName: fitter?.name ?? null,
    minutes,
    changedAt: closedAt ?? createdAt,
  }))
}
