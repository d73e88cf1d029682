import { gradesRising, type StandingFact } from '@glandkeeper/engines/reserve/facts'
import { type Leak, leaksOf } from '@glandkeeper/engines/leak/leaks'
import { days, daysBetween, type Instant, ppmv } from '@glandkeeper/units/quantity'
import type { LeakModel, ValveModel } from '../../generated/sqlite/models.ts'
import type { Write } from '../../platform/store.ts'

/** Seen again so soon after it was seen dry, it is the same leak and was not mended. Set by us. */
const DAYS_UNTIL_ANOTHER_LEAK = 30

/** The leaks of a gland from its facts; `judgedFrom` is the screening value that is a leak here, null where nobody screens. */
export function leaksOfGland(standing: readonly StandingFact[], judgedFrom: number | null): readonly Leak[] {
  const leakFrom = judgedFrom === null ? null : ppmv(judgedFrom)
  return leaksOf(standing, { leakFrom, reopensWithin: days(DAYS_UNTIL_ANOTHER_LEAK) })
}

/** Leaks as the register keeps them, so that all of a plant are one query. */
export function leakRows(
  valve: Pick<ValveModel, 'id' | 'siteId' | 'areaId' | 'service'>,
  standing: readonly StandingFact[],
  judgedFrom: number | null,
): LeakModel[] {
  return leaksOfGland(standing, judgedFrom).map((leak) => ({
    id: leak.id,
    siteId: valve.siteId,
    valveId: valve.id,
    areaId: valve.areaId,
    service: valve.service,
    openedAt: dateOf(leak.openedAt),
    state: leak.state,
    // Seen dry and shown by a meter: nobody saw it, which is what null says.
    worst: leak.worst === null || leak.worst === 'dry' ? null : gradesRising.indexOf(leak.worst),
    worstScreening: leak.worstScreening,
    attempts: leak.attempts.length,
    firstAttemptAt: leak.firstAttemptAt === null ? null : dateOf(leak.firstAttemptAt),
    verifiedAt: leak.verified === null ? null : dateOf(leak.verified.at),
    reopened: leak.reopenedAt.length,
    deferredAt: leak.deferred === null ? null : dateOf(leak.deferred.at),
    deferredUntil: leak.deferred?.until ?? null,
    packedAt: leak.packedAt === null ? null : dateOf(leak.packedAt),
    family: leak.family,
    ageDays: leak.packedAt === null ? null : daysBetween(leak.packedAt, leak.openedAt),
  }))
}

/** Brings the kept leaks of a valve to what its facts say: only what differs is written. */
export async function keepLeaks(write: Write, valveId: string, made: readonly LeakModel[]): Promise<void> {
  const kept = await write.leak.findMany({ where: { valveId } })
  const keptById = new Map(kept.map((row) => [row.id, JSON.stringify(ordered(row))]))
  const changed = made.filter((row) => keptById.get(row.id) !== JSON.stringify(ordered(row)))
  const stays = new Set(made.map(({ id }) => id))
  const gone = [...kept.filter(({ id }) => !stays.has(id)), ...changed].map(({ id }) => id)
  if (gone.length > 0) await write.leak.deleteMany({ where: { valveId, id: { in: gone } } })
  await write.insertRows(
    'leak',
    changed.map((row) => ({ ...row })),
  )
}

/** Are the kept leaks those that the facts make? */
export function leaksDiffer(kept: readonly LeakModel[], made: readonly LeakModel[]): boolean {
  const told = (rows: readonly LeakModel[]) =>
    JSON.stringify(rows.toSorted((one, other) => (one.id < other.id ? -1 : 1)).map(ordered))
  return told(kept) !== told(made)
}

function ordered(row: LeakModel): unknown[] {
  return Object.entries(row)
    .toSorted(([one], [other]) => (one < other ? -1 : 1))
    .map(([, value]) => value)
}

function dateOf(moment: Instant): Date {
  return new Date(moment)
}
