import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import { MOST_STOPS } from './write.ts'

interface Place {
  readonly level: number
  readonly eastM: number | null
  readonly northM: number | null
  readonly walkPosition: number
  readonly areaId: string
}

/** A level counts as so many metres when a stop is put in between. */
const METRES_OF_LEVEL = 20
/** Another area is far away, wherever it is. */
const METRES_OF_AREA = 1000

/** Puts a valve on an open round where it makes the way longest the least. Adding it twice changes nothing. */
export async function addStopTo(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  roundId: string,
  tag: string,
  now: Date,
): Promise<void> {
  const round = await write.round.findFirst({
    where: { id: roundId, siteId: by.siteId, closedAt: null },
    include: { stops: { orderBy: { position: 'asc' }, include: { valve: true } } },
  })
  if (!round) throw new Refusal('round/unknown', roundId)
  const valve = await write.valve.findUnique({ where: { siteId_tag: { siteId: by.siteId, tag } } })
  if (!valve || valve.retiredAt) throw new Refusal('valve/unknown', tag)
  if (round.stops.some(({ valveId }) => valveId === valve.id)) return
  if (round.stops.length >= MOST_STOPS) throw new Refusal('round/too-long')
  const at = bestPlace(
    round.stops.map((stop) => stop.valve),
    valve,
  )
  const before = round.stops.map(({ valveId, minutes, addedById }) => ({ valveId, minutes, addedById }))
  const stops = [...before.slice(0, at), { valveId: valve.id, minutes: null, addedById: by.personId }, ...before.slice(at)]
  // Written anew: a place in the walk is part of a stop's key.
  await write.roundStop.deleteMany({ where: { roundId } })
  await write.roundStop.createMany({ data: stops.map((stop, index) => ({ roundId, position: index + 1, ...stop })) })
  await noteChange(write, by, { subject: 'round', subjectId: roundId, what: 'stop added', before: {}, after: { tag } }, now)
}

/** Index before which the new stop lengthens the way least. */
function bestPlace(stops: readonly Place[], added: Place): number {
  let best = stops.length
  let least = Infinity
  for (let at = 0; at <= stops.length; at += 1) {
    const before = stops[at - 1]
    const after = stops[at]
    const way = (before ? far(before, added) : 0) + (after ? far(added, after) : 0) - (before && after ? far(before, after) : 0)
    if (way < least) {
      least = way
      best = at
    }
  }
  return best
}

function far(one: Place, other: Place): number {
  const apart = Math.abs(one.level - other.level) * METRES_OF_LEVEL + (one.areaId === other.areaId ? 0 : METRES_OF_AREA)
  const isMeasured = one.eastM !== null && one.northM !== null && other.eastM !== null && other.northM !== null
  return isMeasured
    ? apart + Math.hypot((one.eastM ?? 0) - (other.eastM ?? 0), (one.northM ?? 0) - (other.northM ?? 0))
    : apart + Math.abs(one.walkPosition - other.walkPosition)
}
