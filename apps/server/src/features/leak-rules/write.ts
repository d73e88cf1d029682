import type { LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import { refuseContradictions } from './in-order.ts'
import { fieldsOfRule, ruleOf } from './rule-of-row.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

export async function addRuleOf(
  write: Write,
  by: By,
  { rule, exampleOf }: { readonly rule: LeakRuleInput; readonly exampleOf: string | null },
  now: Date,
): Promise<string> {
  refuseContradictions(rule)
  const id = newId()
  await write.leakRule.create({ data: { id, siteId: by.siteId, ...columnsOf(rule), exampleOf, createdAt: now } })
  const after = { ...inWords(rule), ...(exampleOf !== null && { exampleOf }) }
  await noteChange(write, by, { subject: 'leak rule', subjectId: id, what: 'leak rule added', before: {}, after }, now)
  return id
}

export async function changeRuleOf(
  write: Write,
  by: By,
  { ruleId, revision, rule }: { readonly ruleId: string; readonly revision: number; readonly rule: LeakRuleInput },
  now: Date,
): Promise<void> {
  const row = await ruleOf(write, by.siteId, ruleId)
  if (row.revision !== revision) throw new Refusal('rule/changed-meanwhile', row.name)
  refuseContradictions(rule)
  await write.leakRule.update({ where: { id: ruleId }, data: { ...columnsOf(rule), revision: { increment: 1 } } })
  const before = inWords(fieldsOfRule(row))
  const note = { subject: 'leak rule', subjectId: ruleId, what: 'leak rule changed', before, after: inWords(rule) } as const
  await noteChange(write, by, note, now)
}

function columnsOf({ name, ...body }: LeakRuleInput) {
  return { name, body: JSON.stringify(body) }
}

/** For the log: steps as somebody would say them. */
function inWords({ lengthening, byPercent, ...figures }: LeakRuleInput): Record<string, unknown> {
  return {
    ...figures,
    lengthening: lengthening.map((step) => `every ${step.everyDays} days after ${step.cleanLooks} clean looks`).join('; '),
    byPercent: byPercent
      .map((step) => `every ${step.everyDays} days after ${step.afterPeriods} periods at ${step.atMostPercent} % or less`)
      .join('; '),
  }
}
