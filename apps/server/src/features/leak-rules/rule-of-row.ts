import type { LeakRule, LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import type { LeakRuleSet } from '@glandkeeper/engines/leak/rules/rule'
import type { LeakRuleModel } from '../../generated/sqlite/models.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'

/** @throws rule/unknown */
export async function ruleOf(read: Pick<Read, 'leakRule'>, siteId: string, ruleId: string): Promise<LeakRuleModel> {
  const row = await read.leakRule.findFirst({ where: { id: ruleId, siteId } })
  if (!row) throw new Refusal('rule/unknown', ruleId)
  return row
}

export function rulePresented(row: LeakRuleModel, valves: number): LeakRule {
  return { ruleId: row.id, ...fieldsOfRule(row), revision: row.revision, valves, exampleOf: row.exampleOf }
}

export function fieldsOfRule({ name, body }: Pick<LeakRuleModel, 'name' | 'body'>): LeakRuleInput {
  // Parsed when it was written.
  return { ...(JSON.parse(body) as Omit<LeakRuleInput, 'name'>), name }
}

/** More clean looks in a row than this say nothing new. */
export function mostCleanLooks({ lengthening }: Pick<LeakRuleSet, 'lengthening'>): number {
  return Math.max(1, ...lengthening.map(({ cleanLooks }) => cleanLooks))
}
