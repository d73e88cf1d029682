import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { makeRoundsOfPlan } from '@glandkeeper/contract/rounds'
import type { SignedIn } from '../../platform/auth.ts'
import { isoWeekOf } from '../../platform/local-time.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'
import { crewOf, walkPlanOf } from '../crews/index.ts'
import { minutesOnFoot, shortestWalk, writeRound } from '../rounds/index.ts'
import { siteSettings } from '../settings/index.ts'
import { planInUse } from './plan-in-use.ts'
import { weekIndexOf } from './weeks.ts'

/**
 * Makes the rounds of a block of the plan in use: its visits in walking order, cut into as many rounds as days are
 * given. A valve that is on an open round already is left out.
 */
export async function roundsOfPlan(
  write: Write,
  by: SignedIn,
  { weekOf, areaCode, crewId, days }: BodyOf<typeof makeRoundsOfPlan>,
  now: Date,
): Promise<string[]> {
  const { siteId } = by
  const plan = await planInUse(write, siteId)
  const area = await write.area.findUnique({ where: { siteId_code: { siteId, code: areaCode } } })
  if (!area) throw new Refusal('area/unknown', areaCode)
  await crewOf(write, siteId, crewId)
  if (!plan) throw new Refusal('plan/no-visit')
  const week = weekIndexOf(weekOf, plan.startsOn)
  const visits = await write.plannedVisit.findMany({
    where: {
      planId: plan.id,
      areaId: area.id,
      crewId,
      week,
      valve: { retiredAt: null, stops: { none: { round: { closedAt: null } } } },
    },
    orderBy: [{ valve: { level: 'asc' } }, { valve: { walkPosition: 'asc' } }, { valve: { tag: 'asc' } }],
    select: { minutes: true, valve: { select: { id: true, level: true, eastM: true, northM: true } } },
  })
  if (visits.length === 0) throw new Refusal('plan/no-visit')
  const settings = await siteSettings(write, siteId)
  const walkPlan = walkPlanOf(area.walkPlan)
  const { stops } = shortestWalk(
    visits.map(({ valve, minutes }) => ({ ...valve, minutes })),
    walkPlan,
    settings,
  )
  const setUp = area.setUpMinutes ?? settings.minutesToSetUp
  const ids: string[] = []
  for (const [index, portion] of portionsOf(stops, days.length).entries()) {
    const day = days[index]
    if (!day || portion.length === 0) continue
    const walk = shortestWalk(portion, walkPlan, settings)
    const atValves = portion.reduce((sum, { minutes }) => sum + minutes, 0)
    const part = days.length > 1 ? `, ${index + 1} of ${days.length}` : ''
    ids.push(
      await writeRound(
        write,
        by,
        {
          name: `${area.name}, week ${isoWeekOf(weekOf).week}${part}`,
          ...day,
          stops: walk.stops.map(({ id, minutes }) => ({ valveId: id, minutes })),
          metres: walk.metres,
          levels: walk.levels,
          minutes: atValves + minutesOnFoot(walk, settings) + (index === 0 ? setUp : 0),
          ofPlan: { weekOf, areaId: area.id, crewId },
        },
        now,
      ),
    )
  }
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
