import type { SettingValues } from '@glandkeeper/contract/settings'
import type { Objective } from '@glandkeeper/contract/repack-plans'
import type { Outcome } from '@glandkeeper/engines/outcome'
import type { SlotCost } from '@glandkeeper/engines/schedule/repack-plan/input'
import { chanceOverDates, valveSlotCost } from '@glandkeeper/engines/schedule/repack-plan/slot-cost'
import { addDays, days, type Instant, instant } from '@glandkeeper/units/quantity'
import { startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { siteSettings } from '../settings/index.ts'
import type { Candidate } from './candidates.ts'
import type { PlanSlot } from './plan-slots.ts'
import { weightsOf } from './weights.ts'

export interface CostFrame {
  readonly now: Date
  readonly timeZone: string
  readonly objective: Objective
  readonly settings: SettingValues
  /** When what waits is thought to be repacked: after the plan has ended. */
  readonly waitsUntil: Date
}

/** What one valve is in for in one slot, or while it waits. */
export interface SlotFigures {
  readonly chanceOut: number
  readonly expectedLeaks: number
  readonly cost: SlotCost
}

/** What waits is repacked in the plan after: so many days into it. */
const DAYS_INTO_NEXT_PLAN = 91

/** What the valves of a plan are weighed by, as the site has it now. */
export async function costFrame(
  read: Pick<Read, 'site'>,
  { siteId, startsOn, weeks, objective }: { siteId: string; startsOn: string; weeks: number; objective: Objective },
  now: Date,
): Promise<CostFrame> {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const settings = await siteSettings(read, siteId)
  const waitsUntil = startOfDayAt(daysAfter(startsOn, weeks * 7 + DAYS_INTO_NEXT_PLAN), timeZone)
  return { now, timeZone, objective, settings, waitsUntil }
}

/** The columns that keep what a valve is in for. */
export function figuresColumns({ chanceOut, expectedLeaks, cost }: SlotFigures) {
  return {
    chanceOut,
    expectedLeaks,
    cost: cost.total,
    runningCost: cost.chance,
    leakCost: cost.leaks,
    wasteCost: cost.waste,
  }
}

/** Chance, leaks and cost of one valve in a slot whose first day nobody may be sure of; null is waiting. */
export function slotFigures(valve: Candidate, slot: PlanSlot | null, frame: CostFrame): SlotFigures {
  const { now, timeZone, objective, settings, waitsUntil } = frame
  const at = (isoDay: string) => instant(Math.max(now.getTime(), startOfDayAt(isoDay, timeZone).getTime()))
  const likely = slot === null ? instant(waitsUntil.getTime()) : at(slot.likelyOn)
  const chanceOut = slot === null ? valve.outlook.chanceBefore(likely) : chanceOfSlot(valve, slot, at)
  const expectedLeaks = valve.outlook.leaksPerDay * daysAhead(now, likely)
  // What waits throws nothing away.
  const lifeUsed = slot === null ? 1 : valve.outlook.lifeUsedAt(likely)
  const weights = weightsOf(objective, valve.criticality, settings)
  return { chanceOut, expectedLeaks, cost: found(valveSlotCost({ chanceOut, expectedLeaks, lifeUsed }, weights)) }
}

function chanceOfSlot(valve: Candidate, slot: PlanSlot, at: (isoDay: string) => Instant): number {
  const [earliest, likely, latest] = [at(slot.earliestOn), at(slot.likelyOn), at(slot.latestOn)]
  if (earliest === latest) return valve.outlook.chanceBefore(likely)
  const dayOf = (moment: Instant) => (moment - earliest) / MILLISECONDS_PER_DAY
  const over = chanceOverDates((day) => valve.outlook.chanceBefore(addDays(earliest, days(day))), {
    earliest: 0,
    likely: dayOf(likely),
    latest: dayOf(latest),
  })
  return found(over).chance
}

/** Of figures the register vouches for: a refusal is a fault of this program. */
function found<Figures extends object>(outcome: Outcome<Figures>): Figures {
  if (!outcome.ok) throw new TypeError(outcome.problem.detail)
  return outcome
}

const MILLISECONDS_PER_DAY = 86_400_000

function daysAhead(now: Date, moment: Instant): number {
  return Math.max(0, (moment - now.getTime()) / MILLISECONDS_PER_DAY)
}
