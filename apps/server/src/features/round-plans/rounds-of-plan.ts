import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { makeRoundsOfPlan } from '@glandkeeper/contract/rounds'
import type { SignedIn } from '../../platform/auth.ts'
import { isoWeekOf } from '../../platform/local-time.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read, Write } from '../../platform/store.ts'
import { areaOf } from '../areas/index.ts'
import { crewOf, walkPlanOf } from '../crews/index.ts'
import { minutesOnFoot, MOST_STOPS, type NewRound, shortestWalk, writeRound } from '../rounds/index.ts'
import { siteSettings } from '../settings/index.ts'
import { planInUse } from './plan-in-use.ts'
import { weekIndexOf } from './weeks.ts'

/**
 * The rounds of a block of the plan in use: its visits in walking order, cut into as many rounds as days are given. A
 * valve that is on an open round already is left out. Nothing is written: the search for the way takes its time, and
 * no entry may wait for it.
 */
export async function roundsOfPlan(
  read: Read,
  siteId: string,
  { weekOf, areaCode, crewId, days }: BodyOf<typeof makeRoundsOfPlan>,
): Promise<NewRound[]> {
  const [plan, area, settings] = await Promise.all([
    planInUse(read, siteId),
    areaOf(read, siteId, areaCode),
    siteSettings(read, siteId),
    crewOf(read, siteId, crewId),
  ])
  if (!plan) throw new Refusal('plan/no-visit')
  const visits = await read.plannedVisit.findMany({
    where: {
      planId: plan.id,
      areaId: area.id,
      crewId,
      week: weekIndexOf(weekOf, plan.startsOn),
      valve: { retiredAt: null, stops: { none: { round: { closedAt: null } } } },
    },
    orderBy: [{ valve: { level: 'asc' } }, { valve: { walkPosition: 'asc' } }, { valve: { tag: 'asc' } }],
    select: { minutes: true, valve: { select: { id: true, level: true, eastM: true, northM: true } } },
  })
  if (visits.length === 0) throw new Refusal('plan/no-visit')
  if (visits.length > MOST_STOPS * days.length) throw new Refusal('round/too-long')
  const walkPlan = walkPlanOf(area.walkPlan)
  const stops = visits.map(({ valve, minutes }) => ({ ...valve, minutes }))
  const whole = shortestWalk(stops, walkPlan, settings)
  const walks =
    days.length === 1 ? [whole] : portionsOf(whole.stops, days.length).map((portion) => shortestWalk(portion, walkPlan, settings))
  const setUp = area.setUpMinutes ?? settings.minutesToSetUp
  return walks.flatMap((walk, index): NewRound[] => {
    const day = days[index]
    if (!day || walk.stops.length === 0) return []
    const atValves = walk.stops.reduce((sum, { minutes }) => sum + minutes, 0)
    const part = days.length > 1 ? `, ${index + 1} of ${days.length}` : ''
    return [
      {
        name: `${area.name}, week ${isoWeekOf(weekOf).week}${part}`,
        ...day,
        stops: walk.stops.map(({ id, minutes }) => ({ valveId: id, minutes })),
        metres: walk.metres,
        levels: walk.levels,
        minutes: atValves + minutesOnFoot(walk, settings) + (index === 0 ? setUp : 0),
        ofPlan: { weekOf, areaId: area.id, crewId },
      },
    ]
  })
}

/** Writes all of them, or none when somebody else has put one of their valves on a round meanwhile. */
export async function writeRoundsOfPlan(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  rounds: readonly NewRound[],
  now: Date,
): Promise<string[]> {
  const valveIds = rounds.flatMap(({ stops }) => stops.map(({ valveId }) => valveId))
  const isTaken = await write.roundStop.findFirst({ where: { valveId: { in: valveIds }, round: { closedAt: null } } })
  if (isTaken) throw new Refusal('plan/no-visit')
  const ids: string[] = []
  for (const round of rounds) ids.push(await writeRound(write, by, round, now))
  return ids
}

/** Pieces of about the same minutes, one after the other. */
function portionsOf<Stop extends { readonly minutes: number }>(stops: readonly Stop[], count: number): Stop[][] {
  const all = stops.reduce((sum, { minutes }) => sum + minutes, 0)
  const portions: Stop[][] = Array.from({ length: count }, () => [])
  let done = 0
  for (const stop of stops) {
    const at = Math.min(count - 1, Math.floor(((done + stop.minutes / 2) / all) * count))
    portions[at]?.push(stop)
    done += stop.minutes
  }
  return portions
}
