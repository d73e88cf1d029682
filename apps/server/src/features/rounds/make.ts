import type { RoundInput } from '@glandkeeper/contract/rounds'
import { addDays, format, parseISO } from 'date-fns'
import type { z } from 'zod'
import type { SignedIn } from '../../platform/auth.ts'
import { startOfDayAt } from '../../platform/clock.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'

const MOST_STOPS = 200

const dayAfter = (isoDay: string) => format(addDays(parseISO(isoDay), 1), 'yyyy-MM-dd')

/** A round of the valves of some areas that are due for a look by the end of a day, in walking order. */
export async function createRound(
  write: Write,
  me: Pick<SignedIn, 'siteId' | 'personId'>,
  { name, walkOn, fitterId, areaCodes, dueBy }: z.output<typeof RoundInput>,
  now: Date,
): Promise<string> {
  const { siteId } = me
  if (fitterId !== null && !(await write.person.findFirst({ where: { id: fitterId, siteId, retiredAt: null } })))
    throw new Refusal('person/unknown', fitterId)
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
        state: { OR: [{ nextLookAt: null }, { nextLookAt: { lt: startOfDayAt(dayAfter(dueBy), timeZone) } }] },
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
  if (valves.length > MOST_STOPS) throw new Refusal('round/too-long')
  const id = newId()
  await write.round.create({ data: { id, siteId, name, walkOn, fitterId, madeById: me.personId, createdAt: now } })
  await write.roundStop.createMany({
    data: valves.map((valve, index) => ({ roundId: id, position: index + 1, valveId: valve.id })),
  })
  return id
}
