import type { WindowOfVisit } from './windows-of-valve.ts'

/** A visit of the plan in use, in weeks of the plan that is made. */
export interface VisitBefore {
  readonly week: number
  readonly crewId: string
}

export interface PinOfVisit {
  readonly week: number
  readonly crewId: string | null
  readonly madeAt: Date
}

export interface MatchedVisit {
  readonly window: WindowOfVisit
  readonly before: VisitBefore | null
  readonly pin: PinOfVisit | null
}

/** A visit of the week that has begun is done when somebody has been there in it: it is not planned a second time. */
export function withoutDone(before: readonly VisitBefore[], lastSeenAt: Date | null, begins: Date): readonly VisitBefore[] {
  const isDone = lastSeenAt !== null && lastSeenAt >= begins
  return before.filter(({ week }) => week > 0 || !isDone)
}

/** A pin has served when somebody has been there since it was made, and no window holds its week any more. */
export function withoutSpent(
  pins: readonly PinOfVisit[],
  lastSeenAt: Date | null,
  windows: readonly WindowOfVisit[],
): readonly PinOfVisit[] {
  const isHeld = (week: number) => windows.some(({ earliest, latest }) => week >= earliest && week <= latest)
  return pins.filter(({ week, madeAt }) => lastSeenAt === null || lastSeenAt < madeAt || isHeld(week))
}

/**
 * Which visit of the plan before, and which pin, belongs to which visit of a valve: each to the one that is due
 * nearest, and none twice. What matches nothing is done or gone.
 *
 * @param windows in order of their due week
 */
export function matchVisits(
  windows: readonly WindowOfVisit[],
  before: readonly VisitBefore[],
  pins: readonly PinOfVisit[],
): MatchedVisit[] {
  const visits = nearest(windows, before)
  const pinned = nearest(windows, pins)
  return windows.map((window, index) => ({ window, before: visits[index] ?? null, pin: pinned[index] ?? null }))
}

/** Pairs by distance, the closest pair first. */
function nearest<Placed extends { readonly week: number }>(
  windows: readonly WindowOfVisit[],
  placed: readonly Placed[],
): (Placed | undefined)[] {
  const pairs = windows
    .flatMap((window, index) => placed.map((one) => ({ index, one, far: distance(window, one.week) })))
    .toSorted((one, other) => one.far - other.far || one.index - other.index)
  const found: (Placed | undefined)[] = windows.map(() => undefined)
  const used = new Set<Placed>()
  for (const { index, one } of pairs) {
    if (found[index] !== undefined || used.has(one)) continue
    found[index] = one
    used.add(one)
  }
  return found
}

/** None inside the window; outside it the weeks to its nearer end. */
function distance({ earliest, latest, due }: WindowOfVisit, week: number): number {
  const outside = Math.max(earliest - week, week - latest, 0)
  // Of two windows that both hold the week, the one due nearer.
  return outside * 1000 + Math.abs(due - week)
}
