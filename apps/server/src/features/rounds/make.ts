import type { RoundInput } from '@glandkeeper/contract/rounds'
import type { z } from 'zod'
import type { SignedIn } from '../../platform/auth.ts'
import { startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'
import { MOST_STOPS, writeRound } from './write.ts'

/** A round of the valves of some areas that are due for a look by the end of a day, in walking order. */
export async function createRound(
  write: Write,
  me: Pick<SignedIn, 'siteId' | 'personId'>,
  { name, walkOn, fitterId, areaCodes, dueBy }: z.output<typeof RoundInput>,
  now: Date,
): Promise<string> {
  const { siteId } = me
  const areas = await write.area.findMany({ where: { siteId, code: { in: areaCodes } }, select: { id: true, code: true } })
  const strange = areaCodes.find((code) => !areas.some((area) => area.code === code))
  if (strange !== undefined) throw new Refusal('area/unknown', strange)
  const { timeZone } = await write.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const valves = await write.valve.findMany({
    where: {
      siteId,
      retiredAt: null,
      areaId: { in: areas.map(({ id }) => id) },
      ...(dueBy !== null && {
        state: { OR: [{ nextLookAt: null }, { nextLookAt: { lt: startOfDayAt(daysAfter(dueBy, 1), timeZone) } }] },
      }),
    },
    // One floor after the other: stairs cost more than a few steps back.
    orderBy: [
      { area: { walkPosition: 'asc' } },
      { area: { code: 'asc' } },
      { level: 'asc' },
      { walkPosition: 'asc' },
      { tag: 'asc' },
    ],
    select: { id: true },
    take: MOST_STOPS + 1,
  })
  if (valves.length === 0) throw new Refusal('round/nothing-due')
  const stops = valves.map(({ id }) => ({ valveId: id, minutes: null }))
  return writeRound(write, me, { name, walkOn, fitterId, stops, metres: null, levels: null, minutes: null, ofPlan: null }, now)
}
