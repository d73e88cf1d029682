import type { TradeHours } from '@glandkeeper/contract/outages'
import type { WhatIf } from '@glandkeeper/contract/repack-plans'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays'
import { parseISO } from 'date-fns/parseISO'
import type { OutageModel } from '../../generated/sqlite/models.ts'
import { daysAfter, mondayOf } from '../../platform/local-time.ts'
import { hoursByWeek, type HoursOff } from '../days-off/index.ts'
import { slotOfFortnight, slotOfOutage } from './slots.ts'
import { hoursColumns, tradeHours } from './trade-hours.ts'

/** A slot as a plan keeps it: what is used of its hours follows from its rows. */
export interface PlanSlot {
  readonly slotId: string
  readonly kind: 'outage' | 'fortnight'
  readonly name: string
  readonly earliestOn: string
  readonly likelyOn: string
  readonly latestOn: string
  readonly lastOn: string
  /** Empty: the whole site. */
  readonly areaCodes: readonly string[]
  readonly hours: TradeHours
}

export type PlannedOutage = Pick<
  OutageModel,
  | 'id'
  | 'name'
  | 'earliestOn'
  | 'likelyOn'
  | 'latestOn'
  | 'days'
  | 'fittingHours'
  | 'scaffoldingHours'
  | 'isolatingHours'
  | 'areaCodes'
>

export interface SlotFrame {
  readonly startsOn: string
  readonly weeks: number
  readonly settings: SettingValues
  /** Days on which the site does not work. */
  readonly daysOff: readonly HoursOff[]
  readonly outages: readonly PlannedOutage[]
  readonly whatIf: WhatIf | null
}

/** A Monday: fortnights are counted from it, so that a pin on one means the same in every plan. */
const FIRST_FORTNIGHT = '2024-01-01'
const DAYS_OF_FORTNIGHT = 14

/** Fortnights and outages of a plan in order of their likely day, with their hours, as they are or as asked in a what-if. */
export function planSlots(frame: SlotFrame): PlanSlot[] {
  const share = frame.whatIf?.hoursShare ?? 1
  return [...fortnights(frame), ...outageSlots(frame)]
    .map((slot) => ({ ...slot, hours: scaled(slot.hours, share) }))
    .toSorted((one, other) => (one.likelyOn < other.likelyOn ? -1 : one.likelyOn > other.likelyOn ? 1 : 0))
}

function fortnights({ startsOn, weeks, settings, daysOff }: SlotFrame): PlanSlot[] {
  const since = differenceInCalendarDays(parseISO(startsOn), parseISO(FIRST_FORTNIGHT))
  // The first that has not begun.
  const first = daysAfter(FIRST_FORTNIGHT, Math.ceil(since / DAYS_OF_FORTNIGHT) * DAYS_OF_FORTNIGHT)
  const endsOn = daysAfter(startsOn, weeks * 7)
  const slots: PlanSlot[] = []
  for (let monday = first; monday < endsOn; monday = daysAfter(monday, DAYS_OF_FORTNIGHT)) {
    const weeksOfIt = [mondayOf(monday), daysAfter(mondayOf(monday), 7)]
    const worked = hoursByWeek(1, weeksOfIt, daysOff).reduce((sum, week) => sum + week, 0) / weeksOfIt.length
    slots.push({
      slotId: slotOfFortnight(monday),
      kind: 'fortnight',
      name: 'while the plant runs',
      earliestOn: monday,
      likelyOn: monday,
      latestOn: monday,
      lastOn: daysAfter(monday, DAYS_OF_FORTNIGHT - 1),
      areaCodes: [],
      hours: scaled(
        {
          fitting: settings.fittingHoursOnLine,
          scaffolding: settings.scaffoldingHoursOnLine,
          isolating: settings.isolatingHoursOnLine,
        },
        worked,
      ),
    })
  }
  return slots
}

function outageSlots({ startsOn, weeks, outages, whatIf }: SlotFrame): PlanSlot[] {
  const endsOn = daysAfter(startsOn, weeks * 7)
  const slipOf = (id: string) => 7 * (whatIf?.slips.find(({ outageId }) => outageId === id)?.weeks ?? 0)
  const more = whatIf?.oneMoreOutage ?? null
  const all = outages.map((outage) => slotOf(outage.id, { ...outage, ...later(outage, slipOf(outage.id)) }))
  if (more) all.push(slotOf(ONE_MORE, { ...more, ...hoursColumns(more.hours), areaCodes: JSON.stringify(more.areaCodes) }))
  return all.filter(({ likelyOn }) => likelyOn >= startsOn && likelyOn < endsOn)
}

/** The outage of a question is no outage of the register. */
const ONE_MORE = '00000000-0000-0000-0000-000000000000'

function slotOf(id: string, outage: Omit<PlannedOutage, 'id'>): PlanSlot {
  const { name, earliestOn, likelyOn, latestOn, days, areaCodes } = outage
  return {
    slotId: slotOfOutage(id),
    kind: 'outage',
    name,
    earliestOn,
    likelyOn,
    latestOn,
    lastOn: daysAfter(likelyOn, days - 1),
    areaCodes: JSON.parse(areaCodes) as string[],
    hours: tradeHours(outage),
  }
}

function later(outage: PlannedOutage, days: number) {
  const moved = (isoDay: string) => daysAfter(isoDay, days)
  return { earliestOn: moved(outage.earliestOn), likelyOn: moved(outage.likelyOn), latestOn: moved(outage.latestOn) }
}

function scaled({ fitting, scaffolding, isolating }: TradeHours, share: number): TradeHours {
  const part = (hours: number) => Math.round(hours * share * 100) / 100
  return { fitting: part(fitting), scaffolding: part(scaffolding), isolating: part(isolating) } as TradeHours
}
