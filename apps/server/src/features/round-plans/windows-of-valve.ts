import { dueVisits, type VisitWindow } from '@glandkeeper/engines/schedule/due-visits'
import type { VisitCause } from '@glandkeeper/contract/round-plans'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { dayAt } from '../../platform/clock.ts'
import type { KeptLook } from '../glands/index.ts'
import { weekIndexOf } from './weeks.ts'

/** What the register keeps of a valve that its visits follow from. */
export interface PlannedValve {
  readonly access: string
  readonly criticality: string
  readonly lastSeenAt: Date | null
  readonly nextLookAt: Date | null
  /** The next look as it is kept: the rule that decided, and every date that was weighed. */
  readonly nextLook: string | null
  readonly wasMissed: boolean
}

export interface PlanFrame {
  readonly startsOn: string
  readonly weeks: number
  readonly firstFreeWeek: number
  readonly timeZone: string
  readonly settings: SettingValues
}

export interface WindowOfVisit extends VisitWindow {
  readonly cause: VisitCause
  readonly minutes: number
}

const DAYS_OF_WEEK = 7
const MILLISECONDS_OF_DAY = 86_400_000
const followUps: ReadonlySet<string> = new Set(['after a repack', 'after a nip'])
const routines: ReadonlySet<string> = new Set(['leak interval', 'longest time between looks'])

/** Visits of one valve over the plan, with what called for each and how long it takes. */
export function windowsOfValve(
  valve: PlannedValve,
  { startsOn, weeks, firstFreeWeek, timeZone, settings }: PlanFrame,
): WindowOfVisit[] {
  const look = valve.nextLook === null ? null : (JSON.parse(valve.nextLook) as KeptLook)
  const rule = look?.rule ?? 'never seen'
  const nextLook = valve.nextLookAt === null ? 0 : weekIndexOf(dayAt(valve.nextLookAt, timeZone), startsOn)
  const isFollowUp = followUps.has(rule)
  const found = dueVisits({
    nextLook,
    every: Math.max(1, Math.round(daysBetweenLooks(valve, look, settings) / DAYS_OF_WEEK)),
    isFollowUp,
    wasMissed: valve.wasMissed,
    weeks,
    firstFreeWeek,
    windowShare: settings.windowShare,
    catchUpWeeks: settings.catchUpWeeks,
  })
  if (!found.ok) throw new Error(found.problem.detail)
  return found.visits.map((visit) => ({
    ...visit,
    cause: causeOf(visit.kind, rule),
    minutes: minutesOf(valve.access, isFollowUp && visit.kind !== 'routine', settings),
  }))
}

function causeOf(kind: VisitWindow['kind'], rule: VisitCause): VisitCause {
  switch (kind) {
    case 'missed':
      return 'missed on a round'
    case 'overdue':
      return rule === 'never seen' ? 'never seen' : 'overdue'
    case 'next look':
      return rule
    case 'routine':
      return followUps.has(rule) || rule === 'never seen' ? 'longest time between looks' : rule
  }
}

/** Of the routine rules the shorter; where nothing was weighed yet, the longest the site allows. */
function daysBetweenLooks(valve: PlannedValve, look: KeptLook | null, settings: SettingValues): number {
  const most = { low: settings.mostBetweenLow, ordinary: settings.mostBetweenOrdinary, high: settings.mostBetweenHigh }[
    valve.criticality as 'low' | 'ordinary' | 'high'
  ]
  const { lastSeenAt } = valve
  if (look === null || lastSeenAt === null) return most
  const days = look.weighed
    .filter(({ rule }) => routines.has(rule))
    .map(({ at }) => (at - lastSeenAt.getTime()) / MILLISECONDS_OF_DAY)
  return Math.max(settings.leastBetweenLooks, Math.min(most, ...days))
}

/** Minutes at the valve: of the work, and of getting to it. */
export function minutesOf(access: string, isFollowUp: boolean, settings: SettingValues): number {
  const more: Readonly<Record<string, number>> = {
    floor: 0,
    platform: settings.minutesOnPlatform,
    ladder: settings.minutesOnLadder,
    scaffold: settings.minutesOnScaffold,
    'confined space': settings.minutesInConfinedSpace,
  }
  return (isFollowUp ? settings.minutesOfFollowUp : settings.minutesOfLook) + (more[access] ?? 0)
}
