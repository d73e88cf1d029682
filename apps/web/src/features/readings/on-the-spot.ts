import type { ValveCard } from '@glandkeeper/contract/pocket'
import { reserveRules } from '@glandkeeper/engines/reserve/findings'
import { formatMillimetres } from '@glandkeeper/units/format'
import { type Draft, isRead, isTurned, turnedOf } from './draft.ts'
import { farOffExpected } from './far-off.ts'
import { isSpent, leavesAfter, reserveRead } from './leaves.ts'

/** What stands out about an entry, told to the person who can still look again. */
export interface SpotFinding {
  /** That of the server's finding which says the same once the entry has arrived; null where it has none. */
  readonly code: string | null
  readonly says: string
  /** What to do now, in the imperative. */
  readonly nextStep: string
}

const HALF_TURN = { left: 0.5, right: 0.5 }

/** Findings that need no server: stem, tilt, a reading outside expectation, no travel left. In order of danger. */
export function findingsOnTheSpot(draft: Draft, card: ValveCard): SpotFinding[] {
  return [stemFinding(draft), tiltFinding(draft), expectationFinding(draft, card), travelFinding(draft, card)].filter(
    (finding) => finding !== null,
  )
}

function stemFinding({ kind, stem }: Draft): SpotFinding | null {
  if (kind !== 'turns, gap, leak' || (stem !== 'stiff' && stem !== 'seized')) return null
  return {
    code: 'reserve/stem-stiff',
    says: `The stem is ${stem}.`,
    nextStep: 'Do not nip it further: report it. The site procedure says who may ease it, and how.',
  }
}

function tiltFinding({ gapLeft, gapRight }: Draft): SpotFinding | null {
  if (gapLeft === null || gapRight === null) return null
  const tilt = Math.abs(gapLeft - gapRight)
  if (tilt <= reserveRules.tilt) return null
  const high = gapLeft > gapRight ? 'left' : 'right'
  return {
    code: 'reserve/follower-tilts',
    says: `The follower tilts ${formatMillimetres(tilt)}, the ${high} side is high.`,
    nextStep: `Take up the ${high} nut by flats until both gaps are alike, if it may be nipped at all; otherwise report it.`,
  }
}

function expectationFinding(draft: Draft, card: ValveCard): SpotFinding | null {
  const [says] = farOffExpected(draft, card)
  return says === undefined
    ? null
    : { code: 'forecast/unexpected-reading', says, nextStep: 'Read both gaps again and log the second reading.' }
}

function travelFinding(draft: Draft, card: ValveCard): SpotFinding | null {
  if (draft.kind !== 'turns, gap, leak') return null
  const reserve = reserveRead(card, turnedOf(draft), draft)
  if (reserve === null ? isSpent(card.state) : reserve <= 0)
    return {
      code: 'reserve/no-travel-left',
      says: 'No travel is left.',
      nextStep: 'Do not nip it again: report it for a repack.',
    }
  const halfTurn = leavesAfter(card, HALF_TURN)?.travelLeft ?? null
  if (reserve === null || halfTurn === null || reserve >= halfTurn || !(isTurned(draft) || isRead(draft))) return null
  return {
    code: null,
    says: `${formatMillimetres(reserve)} left: less than another half turn.`,
    nextStep: 'Report it for a repack before it leaks again.',
  }
}
