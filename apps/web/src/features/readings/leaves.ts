import type { ValveCard } from '@glandkeeper/contract/pocket'
import { leastGapOf, reserveOf } from '@glandkeeper/engines/reserve/reserve'
import { travelOfTurns } from '@glandkeeper/engines/threads/stud-threads'
import { formatMillimetres } from '@glandkeeper/units/format'
import { type Millimetre, mm, turns } from '@glandkeeper/units/quantity'

export interface Turned {
  readonly left: number
  readonly right: number
}

/** What turning the nuts so far would do, by the register: null where it cannot be said. */
interface Leaves {
  readonly travelLeft: Millimetre
  readonly travelRight: Millimetre
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
  readonly reserve: Millimetre | null
}

type Gland = Pick<ValveCard, 'valve' | 'state'>

export function leavesAfter({ valve: { gland }, state }: Gland, turned: Turned): Leaves | null {
  // What is typed may be no figure for the length of a keystroke.
  if (gland.studThread === null || !Number.isFinite(turned.left) || !Number.isFinite(turned.right)) return null
  const left = travelOfTurns(gland.studThread, turns(turned.left))
  const right = travelOfTurns(gland.studThread, turns(turned.right))
  if (!left.ok || !right.ok) return null
  const gapLeft = sunk(state.gapLeft, left.travel)
  const gapRight = sunk(state.gapRight, right.travel)
  return {
    travelLeft: left.travel,
    travelRight: right.travel,
    gapLeft,
    gapRight,
    reserve: reserveAt({ gland, state, gapLeft, gapRight }),
  }
}

interface Position {
  readonly gland: Gland['valve']['gland']
  readonly state: Gland['state']
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
}

function reserveAt({ gland, state, gapLeft, gapRight }: Position): Millimetre | null {
  return reserveOf(gland, { leastGap: leastGapOf(gapLeft, gapRight), gapAtThreadEnd: threadEndOf(state) })?.reserve ?? null
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

interface ReadGaps {
  readonly gapLeft: number | null
  readonly gapRight: number | null
}

/** What is left by the gaps that were read; a side nobody read stands where the record and the turns put it. */
export function reserveRead(gland: Gland, turned: Turned, read: ReadGaps): Millimetre | null {
  const after = leavesAfter(gland, turned)
  const side = (gap: number | null, expected: Millimetre | null) => (gap === null || !Number.isFinite(gap) ? expected : mm(gap))
  return reserveAt({
    gland: gland.valve.gland,
    state: gland.state,
    gapLeft: side(read.gapLeft, after?.gapLeft ?? null),
    gapRight: side(read.gapRight, after?.gapRight ?? null),
  })
}

/** The small line under the main button: what will be left, or why that cannot be said. A gap that is read goes before turns. */
export function leavesInWords(gland: Gland, turned: Turned, read: ReadGaps): string {
  const { studThread } = gland.valve.gland
  const reserve = reserveRead(gland, turned, read)
  if (reserve !== null)
    return reserve < 0 ? `${formatMillimetres(Math.abs(reserve))} more than there is` : `leaves ${formatMillimetres(reserve)}`
  if (studThread === null) return 'stud thread not recorded: what it leaves is not known'
  if (leavesAfter(gland, turned) === null) return `pitch of ${studThread} not known: what it leaves is not known`
  return 'gap not measured: what it leaves is not known'
}

/** True where the record says the travel is used up: then no turn is offered. */
export function isSpent({ standing, reserve }: Gland['state']): boolean {
  return standing === 'spent' || (reserve !== null && reserve <= 0)
}

/** Half a turn is offered as the one tap only where the record has travel for it, or cannot say. */
export function offersHalfTurn(gland: Gland): boolean {
  const after = leavesAfter(gland, { left: 0.5, right: 0.5 })
  return !isSpent(gland.state) && (after?.reserve ?? 0) >= 0
}
