import type { Ppmv } from '@glandkeeper/units/quantity'
import { type InputProblem, refuse } from '../../outcome.ts'

/** After so many looks without a leak in a row, the next look is due after this many days. */
export interface MonitoringStep {
  readonly cleanLooks: number
  readonly everyDays: number
}

/** After so many periods in a row with no more than this leaking of all, every valve is looked at this often. */
export interface PercentStep {
  readonly atMostPercent: number
  readonly afterPeriods: number
  readonly everyDays: number
}

/** What a site must do about leaks that are measured: a rule of law or its own, as figures. Calendar days throughout. */
export interface LeakRuleSet {
  /** At or above this reading it is a leak. */
  readonly leakFrom: Ppmv
  /** After the day a leak was found. */
  readonly firstAttemptDays: number
  readonly repairDays: number
  /** Between looks, to begin with and after a leak. */
  readonly everyDays: number
  /** By looks without a leak of the valve itself; the fewest looks first. */
  readonly lengthening: readonly MonitoringStep[]
  readonly difficultEveryDays: number
  /** By percent leaking of all valves. */
  readonly byPercent: readonly PercentStep[]
  /** More than this leaking is too many; null where the rule knows no percent. */
  readonly percentAllowed: number | null
  /** Fewer leaking valves than this are never too many. */
  readonly leastValves: number
  /** True where a rule says “at least 2 percent”: then 2.0 itself is above, and only less is at most. */
  readonly percentItselfIsAbove?: boolean
}

type Refusal = { readonly ok: false; readonly problem: InputProblem }

/** Beyond this somebody mistyped. */
const MOST_DAYS = 36_525

/**
 * Refuses a rule that cannot be followed.
 *
 * @example refusedRule({ leakFrom: ppmv(500), firstAttemptDays: 5, repairDays: 3, everyDays: 28, lengthening: [], difficultEveryDays: 365, byPercent: [], percentAllowed: 2, leastValves: 2 })?.problem.field // → 'repairDays'
 */
export function refusedRule(rule: LeakRuleSet): Refusal | null {
  if (!(rule.leakFrom > 0 && rule.leakFrom <= 1e6))
    return refuse(
      'rule/not-a-reading',
      'leakFrom',
      `a leak begins above 0 and at most at 1,000,000 ppmv, not at ${rule.leakFrom}`,
    )
  return (
    refusedRepairDays(rule) ?? refusedMonitoring(rule) ?? refusedPercent(rule) ?? firstOf(rule.byPercent.map(refusedPercentStep))
  )
}

/** @example refusedRepairDays({ firstAttemptDays: 5, repairDays: 15 }) // → null */
export function refusedRepairDays(rule: Pick<LeakRuleSet, 'firstAttemptDays' | 'repairDays'>): Refusal | null {
  const { firstAttemptDays, repairDays } = rule
  const refused = refusedDays({ firstAttemptDays, repairDays }, 0)
  if (refused) return refused
  if (repairDays >= firstAttemptDays) return null
  return refuse('rule/repair-before-attempt', 'repairDays', 'a repair is not due before the first attempt at it')
}

/** @example refusedMonitoring({ everyDays: 0.5, difficultEveryDays: 365, lengthening: [] })?.problem.field // → 'everyDays' */
export function refusedMonitoring(rule: Pick<LeakRuleSet, 'everyDays' | 'difficultEveryDays' | 'lengthening'>): Refusal | null {
  const { everyDays, difficultEveryDays, lengthening } = rule
  const refused = refusedDays({ everyDays, difficultEveryDays }, 1)
  if (refused) return refused
  let before: MonitoringStep = { cleanLooks: 0, everyDays }
  for (const step of lengthening) {
    const wrong = refusedDays({ everyDays: step.everyDays }, 1)
    if (wrong) return wrong
    if (!(Number.isSafeInteger(step.cleanLooks) && step.cleanLooks > before.cleanLooks && step.everyDays >= before.everyDays))
      return refuse('rule/not-lengthening', 'lengthening', 'each step takes more looks than the one before and is no shorter')
    before = step
  }
  return null
}

/** @example refusedPercent({ percentAllowed: 2, leastValves: 2 }) // → null */
export function refusedPercent({
  percentAllowed,
  leastValves,
}: Pick<LeakRuleSet, 'percentAllowed' | 'leastValves'>): Refusal | null {
  if (percentAllowed !== null && !isPercent(percentAllowed))
    return refuse('rule/not-a-percent', 'percentAllowed', `a percent is 0 to 100, not ${percentAllowed}`)
  if (Number.isSafeInteger(leastValves) && leastValves >= 0) return null
  return refuse('rule/not-a-count', 'leastValves', `valves are counted whole, 0 or more, not ${leastValves}`)
}

/** @example refusedPercentStep({ atMostPercent: 2, afterPeriods: 0, everyDays: 90 })?.problem.field // → 'afterPeriods' */
export function refusedPercentStep({ atMostPercent, afterPeriods, everyDays }: PercentStep): Refusal | null {
  if (!isPercent(atMostPercent))
    return refuse('rule/not-a-percent', 'atMostPercent', `a percent is 0 to 100, not ${atMostPercent}`)
  if (!(Number.isSafeInteger(afterPeriods) && afterPeriods >= 1))
    return refuse('rule/not-a-count', 'afterPeriods', `periods are counted whole, 1 or more, not ${afterPeriods}`)
  return refusedDays({ everyDays }, 1)
}

/** @example refusedDays({ everyDays: 28 }, 1) // → null */
export function refusedDays(given: Readonly<Record<string, number>>, least: 0 | 1): Refusal | null {
  for (const [field, value] of Object.entries(given)) {
    if (!(Number.isSafeInteger(value) && value >= least && value <= MOST_DAYS))
      return refuse('rule/not-days', field, `days are counted whole, ${least} to ${MOST_DAYS}, not ${value}`)
  }
  return null
}

function isPercent(value: number): boolean {
  return value >= 0 && value <= 100
}

function firstOf(refusals: readonly (Refusal | null)[]): Refusal | null {
  return refusals.find((refusal) => refusal !== null) ?? null
}
