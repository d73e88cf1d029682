import type { RegulatedLeak } from '@glandkeeper/contract/leak-rules'
import type { Leak as LeakShown } from '@glandkeeper/contract/leaks'
import { repairClock } from '@glandkeeper/engines/leak/rules/clocks'
import type { LeakRuleSet } from '@glandkeeper/engines/leak/rules/rule'
import { calendarDayOf } from '@glandkeeper/engines/stores/calendar-day'
import { subYears } from 'date-fns/subYears'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { gradesRising } from '@glandkeeper/engines/reserve/facts'
import { type Spell, spellsOf } from './last-spell.ts'

type Deferral = RegulatedLeak['deferral']

/** The leaks of a rule with their clocks: those nobody has seen gone, what is due first on top, then those of the last year. */
export async function regulatedLeaks(
  read: Read,
  siteId: string,
  { ruleId, rule }: { readonly ruleId: string; readonly rule: LeakRuleSet },
  { timeZone, now }: { readonly timeZone: string; readonly now: Date },
): Promise<RegulatedLeak[]> {
  const rows = await rowsOf(read, siteId, ruleId, now)
  const spells = await spellsOf(read, siteId, rows)
  const today = dayAt(now, timeZone)
  const leaks = rows.flatMap((row) => {
    const spell = spells.get(row.id)
    const since = row.valve.monitoring?.since ?? ''
    // Seen gone before the rule held for its valve: none of its business.
    if (!spell || (spell.verifiedAt !== null && dayAt(spell.verifiedAt, timeZone) < since)) return []
    return [{ ...leakOf(row), ...clockOf(spell, rule, { timeZone, today }) }]
  })
  return leaks.toSorted(dueFirst)
}

function rowsOf(read: Read, siteId: string, ruleId: string, now: Date) {
  return read.leak.findMany({
    where: {
      siteId,
      OR: [
        // A valve that is gone is repaired no more.
        { state: { in: ['open', 'attempted'] }, valve: { monitoring: { ruleId }, retiredAt: null } },
        { state: 'verified', verifiedAt: { gte: subYears(now, 1) }, valve: { monitoring: { ruleId } } },
      ],
    },
    include: {
      valve: {
        select: {
          tag: true,
          description: true,
          area: { select: { code: true } },
          monitoring: { select: { since: true, judgedFrom: true } },
        },
      },
    },
  })
}

type Row = Awaited<ReturnType<typeof rowsOf>>[number]

function leakOf({ id, valve, worst, worstScreening }: Row) {
  return {
    leakId: id,
    tag: valve.tag,
    description: valve.description,
    areaCode: valve.area.code,
    worst: worst === null ? null : (gradesRising[worst] as LeakShown['worst']),
    worstScreening: worstScreening as LeakShown['worstScreening'],
  }
}

/** In days of the site's calendar. What a device dated ahead of today happened today. */
function clockOf(spell: Spell, rule: LeakRuleSet, { timeZone, today }: { timeZone: string; today: string }) {
  const dayOf = (moment: Date) => {
    const day = dayAt(moment, timeZone)
    return day > today ? today : day
  }
  const detectedOn = dayOf(spell.from)
  const firstAttemptOn = spell.firstAttemptAt && dayOf(spell.firstAttemptAt)
  const repairedOn = spell.verifiedAt && dayOf(spell.verifiedAt)
  const until = spell.deferral?.until ?? null
  // A day somebody mistyped is shown, and holds no clock.
  const deferred = spell.deferral && { until: until !== null && calendarDayOf(until) !== null ? until : null }
  const clock = repairClock({ detectedOn, firstAttemptOn, repairedOn, deferred, today, rule })
  if (!clock.ok) throw new Error(clock.problem.detail)
  const { firstAttemptBy, repairBy, attempt, repair } = clock
  // Put off without a day: to the day the rule itself asks for.
  const daysLeft = clock.daysLeft ?? daysFrom(today, repairBy)
  const deferral: Deferral = spell.deferral
  return { detectedOn, firstAttemptOn, firstAttemptBy, attempt, repairedOn, repairBy, repair, daysLeft, deferral }
}

function daysFrom(day: string, to: string): number {
  return (calendarDayOf(to) ?? 0) - (calendarDayOf(day) ?? 0)
}

function dueFirst(one: RegulatedLeak, other: RegulatedLeak): number {
  if ((one.repairedOn === null) !== (other.repairedOn === null)) return one.repairedOn === null ? -1 : 1
  if (one.repairedOn !== null && other.repairedOn !== null && one.repairedOn !== other.repairedOn)
    return one.repairedOn > other.repairedOn ? -1 : 1
  if (one.repairedOn === null && one.daysLeft !== other.daysLeft) return one.daysLeft - other.daysLeft
  return one.tag < other.tag ? -1 : one.tag > other.tag ? 1 : 0
}
