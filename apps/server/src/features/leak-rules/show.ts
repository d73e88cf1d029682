import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { LeakRule, showRegulated } from '@glandkeeper/contract/leak-rules'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { monitoredValves } from './monitored-valves.ts'
import { nextLooks } from './next-looks.ts'
import { percentByQuarter } from './percent-by-quarter.ts'
import { regulatedLeaks } from './regulated-leaks.ts'
import { ruleOf, rulePresented } from './rule-of-row.ts'

/** Every rule of the site by name, with the valves that stand under it. */
export async function rulesOf(read: Read, siteId: string): Promise<LeakRule[]> {
  const rows = await read.leakRule.findMany({ where: { siteId }, orderBy: [{ name: 'asc' }, { id: 'asc' }] })
  return Promise.all(rows.map(async (row) => rulePresented(row, await valvesUnder(read, siteId, row.id))))
}

export async function shownRule(read: Read, siteId: string, ruleId: string): Promise<LeakRule> {
  const [row, valves] = await Promise.all([ruleOf(read, siteId, ruleId), valvesUnder(read, siteId, ruleId)])
  return rulePresented(row, valves)
}

/** Clocks, looks and percent leaking of one rule, as they stand today. */
export async function regulatedState(
  read: Read,
  siteId: string,
  { ruleId, lookAhead }: { readonly ruleId: string; readonly lookAhead: number },
  now: Date,
): Promise<OkIn<typeof showRegulated>> {
  const [rule, { timeZone }] = await Promise.all([
    shownRule(read, siteId, ruleId),
    read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } }),
  ])
  const when = { timeZone, now }
  const today = dayAt(now, timeZone)
  const [leaks, valves] = await Promise.all([
    regulatedLeaks(read, siteId, { ruleId, rule }, when),
    monitoredValves(read, siteId, { ruleId, rule }, when),
  ])
  const { percent, siteEveryDays } = percentByQuarter(valves, rule, today)
  return { rule, today, leaks, ...nextLooks(valves, rule, { siteEveryDays, today, lookAhead }), percent }
}

function valvesUnder(read: Read, siteId: string, ruleId: string): Promise<number> {
  return read.valveMonitoring.count({ where: { siteId, ruleId, valve: { retiredAt: null } } })
}
