import type { BodyIn } from '@glandkeeper/contract/endpoint'
import {
  addLeakRule,
  changeLeakRule,
  type LeakRule,
  listLeakRules,
  monitorValves,
  showRegulated,
} from '@glandkeeper/contract/leak-rules'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

const rulesKey = ['leak rules'] as const

export const leakRules = queryOptions({
  queryKey: [...rulesKey, 'list'],
  queryFn: ({ signal }) => call(listLeakRules, { signal }),
})

export const regulatedState = (ruleId: string, lookAhead: number) =>
  queryOptions({
    queryKey: [...rulesKey, 'state', ruleId, lookAhead],
    queryFn: ({ signal }) => call(showRegulated, { params: { ruleId }, query: { lookAhead: String(lookAhead) }, signal }),
    // Another number of days changes the route only: the clocks stay in sight. Another rule is another page.
    placeholderData: (before, query) => (query?.queryKey[2] === ruleId ? before : undefined),
  })

/** What counts as a leak may be judged anew by another rule: every page of leaks is read again, after a refusal too. */
function useRuleChange<Input, Output>(change: (input: Input) => Promise<Output>) {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: change,
    onSettled: () =>
      queries.invalidateQueries({
        predicate: ({ queryKey: [first, , third] }) =>
          first === rulesKey[0] || first === 'leaks' || (first === 'valve' && third === 'leaks'),
      }),
  })
}

export type RuleBody = BodyIn<typeof addLeakRule>['rule']

/** Adds a rule, or changes the one given. */
export const useSaveRule = (rule: LeakRule | null, exampleOf: string | null) =>
  useRuleChange((body: RuleBody) =>
    rule === null
      ? call(addLeakRule, { body: { rule: body, exampleOf } })
      : call(changeLeakRule, { params: { ruleId: rule.ruleId }, body: { revision: rule.revision, rule: body } }),
  )

export const useMonitorValves = () => useRuleChange((body: BodyIn<typeof monitorValves>) => call(monitorValves, { body }))
