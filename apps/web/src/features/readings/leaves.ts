import type { ValveHistory } from '@glandkeeper/contract/valves'
import { leastGapOf, reserveOf } from '@glandkeeper/engines/reserve/reserve'
import { travelOfTurns } from '@glandkeeper/engines/threads/stud-threads'
import { formatMillimetres } from '@glandkeeper/units/format'
import { type Millimetre, mm, turns } from '@glandkeeper/units/quantity'

export interface Turned {
  readonly left: number
  readonly right: number
}

/** What turning the nuts so far would do, by the register: null where it cannot be said. */
export interface Leaves {
  readonly travelLeft: Millimetre
  readonly travelRight: Millimetre
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
  readonly reserve: Millimetre | null
}

type Gland = Pick<ValveHistory, 'valve' | 'state'>

export function leavesAfter({ valve: { gland }, state }: Gland, turned: Turned): Leaves | null {
  if (gland.studThread === null) return null
  const left = travelOfTurns(gland.studThread, turns(turned.left))
  const right = travelOfTurns(gland.studThread, turns(turned.right))
  if (!left.ok || !right.ok) return null
  const gapLeft = sunk(state.gapLeft, left.travel)
  const gapRight = sunk(state.gapRight, right.travel)
  const leastGap = leastGapOf(gapLeft, gapRight)
  return { travelLeft: left.travel, travelRight: right.travel, gapLeft, gapRight, reserve: reserveOf(gland, { leastGap, gapAtThreadEnd: threadEndOf(state) })?.reserve ?? null }
}

/** Metal stops at metal: no gap is less than none. */
function sunk(gap: Millimetre | null, travel: Millimetre): Millimetre | null {
  return gap === null ? null : mm(Math.max(gap - travel, 0))
}

/** Only where the thread is what limits the travel does the state say where it ends. */
function threadEndOf({ gapLeft, gapRight, reserve, reserveLimitedBy }: Gland['state']): Millimetre | null {
  const leastGap = leastGapOf(gapLeft, gapRight)
  return reserveLimitedBy === 'thread' && leastGap !== null && reserve !== null ? mm(leastGap - reserve) : null
}

/** The small line under the main button: what will be left, or why that cannot be said. */
export function leavesInWords(gland: Gland, turned: Turned): string {
  const { studThread } = gland.valve.gland
  const after = leavesAfter(gland, turned)
  if (studThread === null) return 'stud thread not recorded: what it leaves is not known'
  if (after === null) return `pitch of ${studThread} not known: what it leaves is not known`
  if (after.reserve === null) return 'gap not measured: what it leaves is not known'
  if (after.reserve < 0) return `${formatMillimetres(-after.reserve)} more than is left`
  return `leaves ${formatMillimetres(after.reserve)}`
}

/** True where the record says the travel is used up: then no turn is offered. */
export function isSpent({ standing, reserve }: Gland['state']): boolean {
  return standing === 'spent' || (reserve !== null && reserve <= 0)
}
