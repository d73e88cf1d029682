import type { LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import { formatCount } from '../../ui/count.ts'

const NBSP = '\u00a0'

/** @example everyInWords(1) // → 'every day' */
export function everyInWords(days: number): string {
  return days === 1 ? 'every day' : `every ${formatCount(days)}${NBSP}days`
}

/** @example percentInWords(2.5) // → '2.5 %' */
export function percentInWords(percent: number): string {
  return `${Number(percent.toFixed(percent < 0.1 ? 3 : 1))}${NBSP}%`
}

/** All that a rule asks for, a sentence for each subject. */
export function ruleInWords(rule: LeakRuleInput): string[] {
  const { leakFrom, firstAttemptDays, repairDays, everyDays, lengthening, difficultEveryDays, byPercent } = rule
  const days = (count: number) => `${formatCount(count)}${NBSP}${count === 1 ? 'day' : 'days'}`
  const longer = lengthening.map((step) => `${everyInWords(step.everyDays)} after ${formatCount(step.cleanLooks)} clean in a row`)
  const steps = byPercent.map(
    ({ atMostPercent, afterPeriods, everyDays: every }) =>
      `${everyInWords(every)} after ${formatCount(afterPeriods)} ${afterPeriods === 1 ? 'quarter' : 'quarters'} at ${percentInWords(atMostPercent)} or less`,
  )
  return [
    `A leak from ${formatCount(leakFrom)}${NBSP}ppmv above background. First attempt within ${days(firstAttemptDays)}, repair within ${days(repairDays)}.`,
    `A look ${[everyInWords(everyDays), ...longer].join('; ')}; where it is difficult, ${everyInWords(difficultEveryDays)}.`,
    ...(steps.length === 0 ? [] : [`By percent leaking of all valves under it: ${steps.join('; ')}.`]),
    ...allowedInWords(rule),
  ]
}

function allowedInWords({ percentAllowed, percentItselfIsAbove, leastValves }: LeakRuleInput): string[] {
  if (percentAllowed === null) return []
  const least = leastValves > 1 ? `; fewer than ${formatCount(leastValves)} leaking valves are never too many` : ''
  return [`${percentItselfIsAbove ? 'Less than' : 'At most'} ${percentInWords(percentAllowed)} may leak${least}.`]
}

/** On every example, and on every rule that was made from one. @example exampleInWords('40 CFR 65.106') // → 'example, after 40 CFR 65.106; your local code decides' */
export function exampleInWords(paragraph: string): string {
  return `example, after ${paragraph}; your local code decides`
}
