import { type Outcome, refuse } from '../../outcome.ts'
import { exactShareLimits } from '../../stats/binomial.ts'
import type { MonitoredKind } from './monitoring.ts'
import { type LeakRuleSet, refusedDays, refusedPercent, refusedPercentStep } from './rule.ts'

/** One valve in one monitoring period. */
export interface MonitoredValve {
  readonly id: string
  /** Read with a meter in the period. */
  readonly monitored: boolean
  readonly leaks: boolean
  readonly kind: MonitoredKind
}

/** Valves that leaked, of those monitored, in one period. */
export interface LeakingCount {
  readonly numerator: number
  readonly denominator: number
}

export interface PercentLeaking extends LeakingCount {
  /** Null where none was monitored. */
  readonly percent: number | null
  /** Exact 95 % limits, in percent: what so few or so many valves can tell of valves like them. */
  readonly lower: number | null
  readonly upper: number | null
  readonly isAbove: boolean
  readonly excluded: { readonly unsafe: number; readonly difficult: number; readonly notMonitored: number }
}

type PercentRule = Pick<LeakRuleSet, 'percentAllowed' | 'leastValves' | 'percentItselfIsAbove'>

/** Percents are compared to the millionth, as whole numbers: 0.29 is no binary fraction. */
const PARTS_OF_A_PERCENT = 1e6

/**
 * Share of valves that leak, as a rule counts it.
 *
 *     percent = 100 * valves that leaked / valves monitored in the period
 *
 * Valves unsafe to monitor are left out, and those that were not monitored. Difficult ones count where they were monitored,
 * unless `difficultCounts` is false. 3 of 150 is 2.0 and not above 2.0, unless the rule says “at least”.
 *
 * @source SRC-757 leaking over all, above 2.0 · SRC-758 at least two valves and 2 % · SRC-763 whole numbers, who counts · SRC-310 limits (docs/sources.md)
 * @returns counts, percent and its limits; or `percent/valve-twice`, `rule/…`
 * @example percentLeaking({ valves: [{ id: 'a', monitored: true, leaks: true, kind: 'ordinary' }], rule: { percentAllowed: 2, leastValves: 2 } }).isAbove // → false
 */
export function percentLeaking(input: {
  readonly valves: readonly MonitoredValve[]
  readonly rule: PercentRule
  readonly difficultCounts?: boolean
}): Outcome<PercentLeaking> {
  const { valves, rule, difficultCounts = true } = input
  const refused = refusedPercent(rule)
  if (refused) return refused
  const seen = new Set<string>()
  const excluded = { unsafe: 0, difficult: 0, notMonitored: 0 }
  let numerator = 0
  let denominator = 0
  for (const { id, monitored, leaks, kind } of valves) {
    if (seen.has(id)) return refuse('percent/valve-twice', 'valves', `the valve ${id} is counted twice`)
    seen.add(id)
    if (kind === 'unsafe') excluded.unsafe++
    else if (kind === 'difficult' && !difficultCounts) excluded.difficult++
    else if (!monitored) excluded.notMonitored++
    else {
      denominator++
      if (leaks) numerator++
    }
  }
  const isAbove = rule.percentAllowed !== null && isMoreThan(rule.percentAllowed, { numerator, denominator }, rule)
  if (denominator === 0) return { ok: true, numerator, denominator, percent: null, lower: null, upper: null, isAbove, excluded }
  const limits = exactShareLimits({ found: numerator, lookedAt: denominator, confidence: 0.95 })
  if (!limits.ok) return limits
  const percent = (100 * numerator) / denominator
  const [lower, upper] = [100 * limits.lower, 100 * limits.upper]
  return { ok: true, numerator, denominator, percent, lower, upper, isAbove, excluded }
}

/**
 * How often all valves are monitored, by what leaked of them in the periods before.
 *
 *     a step holds after so many periods in a row, up to the last one, with no more than its percent
 *
 * Of the steps that hold the longest counts. A period in which none was monitored was skipped and tells nothing.
 *
 * @source SRC-757 skipped periods · SRC-756 SRC-758 likewise (docs/sources.md)
 * @param history periods in order, the last one last
 * @returns days, and the periods in a row with no more than the largest percent of a step; or `percent/not-a-count`, `rule/…`
 * @example stepByPercent([{ numerator: 3, denominator: 150 }], { everyDays: 90, byPercent: [{ atMostPercent: 2, afterPeriods: 1, everyDays: 181 }], leastValves: 0 }) // → { ok: true, everyDays: 181, cleanPeriods: 1 }
 */
export function stepByPercent(
  history: readonly LeakingCount[],
  rule: Pick<LeakRuleSet, 'everyDays' | 'byPercent' | 'leastValves' | 'percentItselfIsAbove'>,
): Outcome<{ readonly everyDays: number; readonly cleanPeriods: number }> {
  const refused =
    refusedDays({ everyDays: rule.everyDays }, 1) ?? refusedPercent({ percentAllowed: null, leastValves: rule.leastValves })
  if (refused) return refused
  for (const { numerator, denominator } of history) {
    if (!(Number.isSafeInteger(numerator) && Number.isSafeInteger(denominator) && numerator >= 0 && numerator <= denominator))
      return refuse('percent/not-a-count', 'history', `${numerator} of ${denominator} cannot have leaked`)
  }
  const known = history.filter(({ denominator }) => denominator > 0)
  let everyDays = rule.everyDays
  let cleanPeriods = 0
  for (const step of rule.byPercent) {
    const wrong = refusedPercentStep(step)
    if (wrong) return wrong
    const inARow = known.length - 1 - known.findLastIndex((count) => isMoreThan(step.atMostPercent, count, rule))
    if (inARow >= step.afterPeriods) everyDays = Math.max(everyDays, step.everyDays)
    cleanPeriods = Math.max(cleanPeriods, inARow)
  }
  return { ok: true, everyDays, cleanPeriods }
}

function isMoreThan(
  percent: number,
  { numerator, denominator }: LeakingCount,
  { leastValves, percentItselfIsAbove = false }: Pick<LeakRuleSet, 'leastValves' | 'percentItselfIsAbove'>,
): boolean {
  if (denominator === 0 || numerator < leastValves) return false
  const leaking = numerator * 100 * PARTS_OF_A_PERCENT
  const allowed = Math.round(percent * PARTS_OF_A_PERCENT) * denominator
  return percentItselfIsAbove ? leaking >= allowed : leaking > allowed
}
