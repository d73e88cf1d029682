import type { Leak, LeakState } from '@glandkeeper/contract/leaks'
import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { listLeaks } from '@glandkeeper/contract/leaks'
import type { LeakModel } from '../../generated/sqlite/models.ts'
import { gradesRising } from '@glandkeeper/engines/reserve/facts'

type LeakIn = Omit<OkIn<typeof listLeaks>['rows'][number], 'tag' | 'description' | 'areaCode' | 'service'>

/** A kept leak in the terms of the contract. */
export function presentLeak(row: LeakModel): LeakIn {
  return {
    leakId: row.id,
    openedAt: row.openedAt.toISOString(),
    state: row.state as LeakState,
    worst: row.worst === null ? null : (gradesRising[row.worst] as Leak['worst']),
    worstScreening: row.worstScreening,
    attempts: row.attempts,
    firstAttemptAt: row.firstAttemptAt?.toISOString() ?? null,
    verifiedAt: row.verifiedAt?.toISOString() ?? null,
    reopened: row.reopened,
    deferredUntil: row.deferredUntil,
    isDeferred: row.deferredAt !== null,
    packedAt: row.packedAt?.toISOString() ?? null,
    family: row.family,
  }
}
