import { LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import { faultsOf } from '@glandkeeper/contract/problem'
import { expect, test } from 'vitest'
import { emptyRule, nextRow, type RuleDraft, ruleDraftOf, ruleOfDraft } from './rule-draft.ts'

const rule = LeakRuleInput.parse({
  name: 'After a paragraph',
  leakFrom: 10_000,
  firstAttemptDays: 5,
  repairDays: 15,
  everyDays: 28,
  lengthening: [{ cleanLooks: 2, everyDays: 90 }],
  difficultEveryDays: 365,
  byPercent: [{ atMostPercent: 2, afterPeriods: 2, everyDays: 181 }],
  percentAllowed: 2,
  percentItselfIsAbove: false,
  leastValves: 2,
  correlation: 'SOCMI gas valve',
})
const faults = (draft: RuleDraft) => {
  const { error } = LeakRuleInput.safeParse(ruleOfDraft(draft))
  return error ? faultsOf(error).map(({ pointer }) => pointer) : []
}

test('a rule comes back from its form as it went in', () => {
  expect(ruleOfDraft(ruleDraftOf(rule))).toEqual(rule)
  expect(ruleOfDraft(ruleDraftOf({ ...rule, percentAllowed: null }))).toMatchObject({ percentAllowed: null })
})

test('of an empty form every needed figure is missed in its place, and no percent is a rule without one', () => {
  expect(faults(emptyRule)).toEqual([
    '#/name',
    '#/leakFrom',
    '#/firstAttemptDays',
    '#/repairDays',
    '#/everyDays',
    '#/difficultEveryDays',
  ])
})

test('a fault of a step has the place of the step', () => {
  const draft = ruleDraftOf(rule)
  const steps = [...draft.lengthening, { row: 1, cleanLooks: 'six', everyDays: '' }]
  expect(faults({ ...draft, lengthening: steps })).toEqual(['#/lengthening/1/cleanLooks', '#/lengthening/1/everyDays'])
})

test('a new row has a number no other has, also after one was left out', () => {
  expect(nextRow([])).toBe(0)
  expect(nextRow([{ row: 4 }, { row: 2 }])).toBe(5)
})
