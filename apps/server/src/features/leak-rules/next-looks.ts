import type { MonitoringLook } from '@glandkeeper/contract/leak-rules'
import { type MonitoringReason, nextMonitoring } from '@glandkeeper/engines/leak/rules/monitoring'
import type { LeakRuleSet } from '@glandkeeper/engines/leak/rules/rule'
import { daysAfter } from '../../platform/local-time.ts'
import type { MeterLook } from './meter-looks.ts'
import type { MonitoredValve } from './monitored-valves.ts'
import { mostCleanLooks } from './rule-of-row.ts'

/** Whom to hold the meter to within so many days, in walking order, and who is unsafe to monitor. */
export function nextLooks(
  valves: readonly MonitoredValve[],
  rule: LeakRuleSet,
  { siteEveryDays, today, lookAhead }: { readonly siteEveryDays: number; readonly today: string; readonly lookAhead: number },
): { readonly looks: MonitoringLook[]; readonly unsafe: MonitoringLook[] } {
  const lastDay = daysAfter(today, lookAhead)
  const all = valves.filter(({ isRetired }) => !isRetired).map((valve) => lookAt(valve, rule, { siteEveryDays, today }))
  return {
    looks: all.filter(({ dueOn }) => dueOn !== null && dueOn <= lastDay),
    unsafe: all.filter(({ dueOn }) => dueOn === null),
  }
}

function lookAt(
  valve: MonitoredValve,
  rule: LeakRuleSet,
  { siteEveryDays, today }: { readonly siteEveryDays: number; readonly today: string },
): MonitoringLook {
  const { kind, since, looks } = valve
  const next = nextMonitoring({
    kind,
    since,
    looks: looksThatMatter(looks, rule),
    rule,
    siteEveryDays,
    today,
  })
  if (!next.ok) throw new Error(next.problem.detail)
  const last = looks.at(-1)
  const cleanInARow = cleanAtTheEnd(looks, rule)
  return {
    tag: valve.tag,
    description: valve.description,
    areaCode: valve.areaCode,
    level: valve.level,
    kind,
    note: valve.note,
    lastOn: last?.day ?? null,
    lastNet: last?.net ?? null,
    cleanInARow,
    everyDays: next.everyDays ?? rule.everyDays,
    dueOn: next.dueOn,
    isOverdue: next.isOverdue,
    reason: reasonInWords(next.reason, cleanInARow),
  }
}

/** The last look that leaked, and as many clean ones since as a step of the rule may ask for. */
function looksThatMatter(looks: readonly MeterLook[], rule: LeakRuleSet): { on: string; leaks: boolean }[] {
  const most = mostCleanLooks(rule)
  const clean = cleanAtTheEnd(looks, rule)
  const lastLeak = looks.slice(looks.length - clean - 1, looks.length - clean)
  return [...lastLeak, ...looks.slice(looks.length - Math.min(clean, most))].map(({ day, net }) => ({
    on: day,
    leaks: net >= rule.leakFrom,
  }))
}

function cleanAtTheEnd(looks: readonly MeterLook[], { leakFrom }: LeakRuleSet): number {
  return looks.length - 1 - looks.findLastIndex(({ net }) => net >= leakFrom)
}

function reasonInWords(reason: MonitoringReason, cleanInARow: number): string {
  switch (reason) {
    case 'at first':
      return 'as the rule begins'
    case 'after clean looks':
      return cleanInARow === 1 ? 'one clean look' : `${cleanInARow} clean looks in a row`
    case 'after a leak':
      return 'it leaked, and has not been clean often enough since'
    case 'by percent leaking':
      return 'few of all valves leak'
    case 'difficult to monitor':
      return 'difficult to monitor'
    case 'unsafe to monitor':
      return 'unsafe to monitor: when it is safe'
  }
}
