import type { ValveCard } from '@glandkeeper/contract/pocket'
import { varianceOfTravel } from '@glandkeeper/engines/wear/filter'
import { SECOND_READING_FROM } from '@glandkeeper/engines/wear/surprise'
import { formatMillimetres } from '@glandkeeper/units/format'
import { type Draft, isRead, isTurned, turnedOf } from './draft.ts'
import { leavesAfter, reserveRead } from './leaves.ts'

/**
 * Asks to read again, at the valve, where the gaps leave something else than the readings before make likely. What is
 * expected holds for a look now at the packing that is in: not for a repack, nor for a visit before the last entry.
 */
export function farOffExpected(draft: Draft, history: ValveCard): string[] {
  if (draft.kind !== 'turns, gap, leak' || !isRead(draft) || isBefore(draft.takenAt, history.state.lastSeenAt)) return []
  const reserve = reserveRead(history, turnedOf(draft), draft)
  const expects = isTurned(draft) ? expectedAfterTurns(draft, history) : history.expects
  if (reserve === null || expects === null) return []
  const most = SECOND_READING_FROM * expects.deviation
  if (!(Math.abs(reserve - expects.reserve) > most)) return []
  const low = (expects.reserve - most).toFixed(1).replace('-', '−')
  return [
    `Read: ${formatMillimetres(reserve)} left. Expected: about ${formatMillimetres(expects.reserve)}, hardly ever outside ${low} to ${formatMillimetres(expects.reserve + most)}.`,
    'Read both gaps again. Saved all the same, the reading is kept and marked.',
  ]
}

/** A gap is read after the nuts were turned: their travel is counted from the last level, in place of the wear since. */
function expectedAfterTurns(draft: Draft, history: ValveCard): { reserve: number; deviation: number } | null {
  const { expects, state } = history
  const after = leavesAfter(history, turnedOf(draft))?.reserve ?? null
  if (expects === null || after === null || state.reserve === null || state.forecast === null) return null
  const travel = state.reserve - after
  return {
    reserve: state.forecast.level - travel,
    deviation: Math.sqrt(expects.deviation ** 2 + varianceOfTravel({ travels: [travel], step: travel })),
  }
}

function isBefore(takenAt: string | null, lastSeenAt: string | null): boolean {
  return takenAt !== null && lastSeenAt !== null && new Date(takenAt) < new Date(lastSeenAt)
}
