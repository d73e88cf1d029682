import type { PercentLeaking } from '@glandkeeper/contract/leak-rules'
import { type PercentLeaking as Counted, percentLeaking, stepByPercent } from '@glandkeeper/engines/leak/rules/percent-leaking'
import type { LeakRuleSet } from '@glandkeeper/engines/leak/rules/rule'
import type { MonitoredValve } from './monitored-valves.ts'
import { quarterOf, QUARTERS, quartersUpTo } from './quarters.ts'

type Percent = Exclude<PercentLeaking['percent'], null>

/** Percent leaking of the quarter that runs and of those before, and the days between looks that follow from it. */
export function percentByQuarter(
  valves: readonly MonitoredValve[],
  rule: LeakRuleSet,
  today: string,
): { readonly percent: PercentLeaking; readonly siteEveryDays: number } {
  const names = quartersUpTo(today, QUARTERS)
  const leakedIn = valves.map((valve) => leakedByQuarter(valve, rule))
  const counts = names.map((name) => countOf(valves, leakedIn, name, rule))
  const running = counts.at(-1)
  if (!running) throw new Error('no quarter runs')
  const runningName = names.at(-1) ?? ''
  const retired = valves.filter((valve, place) => valve.isRetired && !leakedIn[place]?.has(runningName)).length
  const excluded = [
    { why: 'unsafe to monitor', valves: running.excluded.unsafe },
    { why: 'not yet monitored in this quarter', valves: running.excluded.notMonitored },
    { why: 'retired', valves: retired },
  ]
  return {
    percent: {
      ...shareOf(running),
      lower: running.lower as Percent | null,
      upper: running.upper as Percent | null,
      allowed: rule.percentAllowed as Percent | null,
      isAbove: running.isAbove,
      excluded: excluded.filter((one) => one.valves > 0),
      course: counts.map((count, place) => ({ period: names[place] ?? '', ...shareOf(count) })),
    },
    siteEveryDays: everyDaysBy(counts, rule),
  }
}

/** A quarter that runs can make an end of longer times between looks; it cannot earn them yet. */
function everyDaysBy(counts: readonly Counted[], rule: LeakRuleSet): number {
  const [over, withRunning] = [stepByPercent(counts.slice(0, -1), rule), stepByPercent(counts, rule)]
  if (!over.ok) throw new Error(over.problem.detail)
  if (!withRunning.ok) throw new Error(withRunning.problem.detail)
  return Math.min(over.everyDays, withRunning.everyDays)
}

/** The quarters in which a meter was held to the valve, and whether it leaked then. */
function leakedByQuarter({ looks }: MonitoredValve, { leakFrom }: LeakRuleSet): ReadonlyMap<string, boolean> {
  const leaked = new Map<string, boolean>()
  for (const { day, net } of looks) {
    const quarter = quarterOf(day)
    leaked.set(quarter, (leaked.get(quarter) ?? false) || net >= leakFrom)
  }
  return leaked
}

/** A valve that is gone still counts in the quarters it was monitored in. */
function countOf(
  valves: readonly MonitoredValve[],
  leakedIn: readonly ReadonlyMap<string, boolean>[],
  quarter: string,
  rule: LeakRuleSet,
): Counted {
  const counted = valves.flatMap(({ valveId: id, kind, isRetired }, place) => {
    const leaks = leakedIn[place]?.get(quarter)
    if (leaks === undefined && isRetired) return []
    return [{ id, kind, monitored: leaks !== undefined, leaks: leaks === true }]
  })
  const found = percentLeaking({ valves: counted, rule })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

function shareOf({ numerator, denominator, percent }: Counted) {
  return { numerator, denominator, percent: percent as Percent | null }
}
