import type { LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import { refusedRule } from '@glandkeeper/engines/leak/rules/rule'
import { Refusal } from '../../platform/problem.ts'

/** A rule that nobody could follow is refused where it contradicts itself. @throws rule/not-in-order, request/invalid */
export function refuseContradictions(rule: LeakRuleInput): void {
  const problem = refusedRule(rule)?.problem
  if (problem?.code === 'rule/not-a-reading') throw refusal('request/invalid', problem.field, problem.detail)
  if (problem) throw refusal('rule/not-in-order', problem.field, problem.detail)
  const detail = contradictionByPercent(rule)
  if (detail !== null) throw refusal('rule/not-in-order', 'byPercent', detail)
}

function refusal(code: 'request/invalid' | 'rule/not-in-order', field: string, detail: string): Refusal {
  return new Refusal(code, detail, [{ pointer: `#/rule/${field}`, detail }])
}

/** What is harder to keep to may not ask for more looks. */
function contradictionByPercent({ byPercent, everyDays }: LeakRuleInput): string | null {
  if (byPercent.some((step) => step.everyDays < everyDays))
    return `a step by percent leaking is no shorter than ${everyDays} days, as the rule begins`
  const isContradicted = byPercent.some((hard) =>
    byPercent.some(
      (easy) =>
        hard.atMostPercent <= easy.atMostPercent && hard.afterPeriods >= easy.afterPeriods && hard.everyDays < easy.everyDays,
    ),
  )
  return isContradicted ? 'less leaking, or for longer, may not bring the next look nearer' : null
}
