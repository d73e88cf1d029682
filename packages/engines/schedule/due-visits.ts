import { type Outcome, refuse } from '../outcome.ts'

/** What is known of one valve for its visits of the year, in weeks counted from the first week of the plan. */
export interface DueVisitsInput {
  /** Week of the next look; below 0 when it is overdue. */
  readonly nextLook: number
  /** Weeks between routine looks. */
  readonly every: number
  /** A follow-up holds to its week: it has no window to either side. */
  readonly isFollowUp: boolean
  /** A round came back without it, so that it is wanted soon. */
  readonly wasMissed: boolean
  /** Weeks of the plan, and the first in which anything new may be planned. */
  readonly weeks: number
  readonly firstFreeWeek: number
  /** Share of the time between looks by which one may come earlier or later. */
  readonly windowShare: number
  /** Weeks in which what is overdue or was missed is caught up with. */
  readonly catchUpWeeks: number
}

export interface VisitWindow {
  readonly due: number
  readonly earliest: number
  readonly latest: number
  readonly kind: 'next look' | 'overdue' | 'missed' | 'routine'
}

/**
 * The visits of one valve over the weeks of a plan, each with the weeks it may be made in.
 *
 *     routine    due ± max(1, share × weeks between looks), less where windows of two looks would meet
 *     follow-up  its week alone
 *     overdue, or missed on a round: within the weeks to catch up, from the first week that is free
 *     after the first, one look every so many weeks
 *
 * @source SRC-733 windows of visits (docs/sources.md)
 * @returns visits due within the plan, or `visits/input`
 * @example dueVisits({ nextLook: 3, every: 8, isFollowUp: false, wasMissed: false, weeks: 20, firstFreeWeek: 0, windowShare: 0.25, catchUpWeeks: 2 }).visits // → [{ due: 3, earliest: 1, latest: 5, kind: 'next look' }, { due: 11, earliest: 9, latest: 13, kind: 'routine' }, { due: 19, earliest: 17, latest: 21, kind: 'routine' }]
 */
export function dueVisits(input: DueVisitsInput): Outcome<{ visits: readonly VisitWindow[] }> {
  const { nextLook, every, weeks, firstFreeWeek, windowShare, catchUpWeeks } = input
  const whole = { nextLook, every, weeks, firstFreeWeek, catchUpWeeks }
  for (const [field, value] of Object.entries(whole))
    if (!Number.isInteger(value)) return refuse('visits/input', field, `weeks are whole numbers, not ${value}`)
  if (every < 1 || catchUpWeeks < 1 || weeks < 1)
    return refuse('visits/input', 'every', 'a plan, the time between looks and the time to catch up have at least one week')
  if (!(windowShare >= 0 && windowShare <= 0.5))
    return refuse('visits/input', 'windowShare', `a window is 0 to half of the time between looks, not ${windowShare}`)
  const first = firstWindow(input)
  const half = halfWindow(every, windowShare)
  const visits = first.due < weeks && first.earliest < weeks ? [first] : []
  // What was due before the plan began is followed from now on: nobody makes up for looks that were left out.
  for (let due = Math.max(nextLook, 0) + every; due < weeks; due += every)
    visits.push(freeWindow(input, { due, earliest: due - half, latest: due + half, kind: 'routine' }))
  return { ok: true, visits }
}

function firstWindow(input: DueVisitsInput): VisitWindow {
  const { nextLook, every, isFollowUp, wasMissed, firstFreeWeek, windowShare, catchUpWeeks } = input
  const caughtUpBy = firstFreeWeek + catchUpWeeks - 1
  if (wasMissed) return { due: nextLook, earliest: firstFreeWeek, latest: caughtUpBy, kind: 'missed' }
  if (nextLook < 0) return { due: nextLook, earliest: firstFreeWeek, latest: caughtUpBy, kind: 'overdue' }
  const half = isFollowUp ? 0 : halfWindow(every, windowShare)
  return freeWindow(input, { due: nextLook, earliest: nextLook - half, latest: nextLook + half, kind: 'next look' })
}

/** A window that ends before anything may be planned is caught up with instead. */
function freeWindow({ firstFreeWeek, catchUpWeeks }: DueVisitsInput, window: VisitWindow): VisitWindow {
  const earliest = Math.max(firstFreeWeek, window.earliest)
  const latest = window.latest < firstFreeWeek ? firstFreeWeek + catchUpWeeks - 1 : window.latest
  return { ...window, earliest, latest }
}

function halfWindow(every: number, windowShare: number): number {
  if (windowShare === 0) return 0
  return Math.min(Math.max(1, Math.round(every * windowShare)), Math.floor((every - 1) / 2))
}
