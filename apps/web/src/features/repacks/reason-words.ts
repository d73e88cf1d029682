import { trades } from '@glandkeeper/contract/outages'
import type { Objective, RepackSlot } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack, RepackReason } from '@glandkeeper/contract/planned-repacks'
import { formatDay } from '../../platform/site-time.ts'
import { capital } from '../../ui/sentence.ts'
import { costInWords } from './plan-words.ts'
import { slotNamed } from './slot-words.ts'

/** What a slot is short of, as the object of a sentence: hours of a trade, or an item of the store. */
function shortOf(blockedBy: string | null): string {
  if (blockedBy === null) return 'room'
  return (trades as readonly string[]).includes(blockedBy) ? `hours of ${blockedBy}` : blockedBy
}

/** Why a valve is in its slot, or waits. */
export function reasonInWords({ reason, blockedBy, pin }: Pick<PlannedRepack, 'reason' | 'blockedBy' | 'pin'>): string {
  const because: Readonly<Record<RepackReason, string>> = {
    pinned: pin?.kind === 'in' ? `Pinned here by ${pin.by}.` : 'Put here by hand, or isolated with one that is.',
    'costs least of all its slots': 'Costs least here of all slots it could be in.',
    'only an outage isolates it': 'Only an outage isolates it, and this one costs least.',
    'a cheaper slot is closed to it': 'A cheaper slot does not reach its area, or it is kept out of it.',
    'a cheaper slot has no hours left': `A cheaper slot has not enough ${shortOf(blockedBy)} left.`,
    'cord or parts come later': `There is not enough ${blockedBy ?? 'cord or parts'} in the store before a cheaper slot.`,
    'waits: repacking now would waste more': 'Waits: repacking it within the plan would waste more than it risks.',
    'no slot has room': `Waits: no slot it could be in has enough ${shortOf(blockedBy)}.`,
    'no slot is open to it': 'Waits: no outage reaches it, and it cannot be isolated while the plant runs.',
    'pin cannot be kept': 'Waits: its pin cannot be kept.',
  }
  return because[reason]
}

/**
 * The next best slot and what it would cost more; nothing of what a hand has put there.
 *
 * @example runnerUpInWords({ reason: 'no slot has room', runnerUp: { slotId: null, extraCost: 0.42 } }, [], 'chance') // → 'Next best: to wait, 0.42 points more.'
 */
export function runnerUpInWords(
  { reason, runnerUp }: Pick<PlannedRepack, 'reason' | 'runnerUp'>,
  slots: readonly RepackSlot[],
  objective: Objective,
): string {
  if (runnerUp === null)
    return reason === 'pinned' || reason === 'pin cannot be kept' ? '' : 'There is no other slot it could be in.'
  const extra = costInWords(Math.abs(runnerUp.extraCost), objective)
  // A pin may be kept at more cost than another slot had.
  const cost = Number.parseFloat(extra) === 0 ? 'as good' : `${extra} ${runnerUp.extraCost < 0 ? 'less' : 'more'}`
  return `Next best: ${slotNamed(slots, runnerUp.slotId)}, ${cost}.`
}

/** @example pinInWords({ kind: 'not in', slotId: 'outage:a', by: 'E. Marlow' }, slots) // → 'E. Marlow keeps it out of Summer stop' */
export function pinInWords({ kind, slotId, by }: NonNullable<PlannedRepack['pin']>, slots: readonly RepackSlot[]): string {
  return `${by} ${kind === 'in' ? 'pinned it to' : 'keeps it out of'} ${slotNamed(slots, slotId)}`
}

/** @example boundaryInWords('', true) // → 'Isolated alone, while the plant runs' */
export function boundaryInWords({ boundary, isolatesOnLine }: Pick<PlannedRepack, 'boundary' | 'isolatesOnLine'>): string {
  const which = boundary === '' ? 'isolated alone' : `boundary ${boundary}`
  return capital(`${which}, ${isolatesOnLine ? 'while the plant runs' : 'in an outage only'}`)
}

/** The middle of a forecast, which may be over. @example runsOutInWords('2026-06-01', '2026-05-04') // → 'likely on 1 Jun 2026' */
export function runsOutInWords(runsOutOn: string | null, today: string): string {
  if (runsOutOn === null) return 'no day within twenty years'
  return `likely ${runsOutOn < today ? 'since' : 'on'} ${formatDay(runsOutOn)}`
}
