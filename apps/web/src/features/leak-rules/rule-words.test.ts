import { LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import { expect, test } from 'vitest'
import { everyInWords, exampleInWords, percentInWords, ruleInWords } from './rule-words.ts'

const rule = LeakRuleInput.parse({
  name: 'After a paragraph',
  leakFrom: 10_000,
  firstAttemptDays: 5,
  repairDays: 15,
  everyDays: 28,
  lengthening: [{ cleanLooks: 2, everyDays: 90 }],
  difficultEveryDays: 365,
  byPercent: [{ atMostPercent: 2, afterPeriods: 1, everyDays: 181 }],
  percentAllowed: 2,
  percentItselfIsAbove: false,
  leastValves: 2,
  correlation: 'SOCMI gas valve',
})
const plain = (sentences: readonly string[]) => sentences.map((sentence) => sentence.replaceAll('\u00a0', ' '))

test('a rule in sentences, with all of its figures', () => {
  expect(plain(ruleInWords(rule))).toEqual([
    'A leak from 10,000 ppmv above background. First attempt within 5 days, repair within 15 days.',
    'A look every 28 days; every 90 days after 2 clean in a row; where it is difficult, every 365 days.',
    'By percent leaking of all valves under it: every 181 days after 1 quarter at 2 % or less.',
    'At most 2 % may leak; fewer than 2 leaking valves are never too many.',
  ])
})

test('what a rule does not ask for is not said', () => {
  expect(ruleInWords({ ...rule, percentAllowed: null, byPercent: [] })).toHaveLength(2)
  expect(plain(ruleInWords({ ...rule, leastValves: 0 })).at(-1)).toBe('At most 2 % may leak.')
  expect(plain(ruleInWords({ ...rule, leastValves: 0, percentItselfIsAbove: true })).at(-1)).toBe('Less than 2 % may leak.')
})

test('a day is a day, and a small percentage is not nought', () => {
  expect(plain([everyInWords(1), percentInWords(0.025), percentInWords(2.04)])).toEqual(['every day', '0.025 %', '2 %'])
  expect(exampleInWords('40 CFR 65.106')).toBe('example, after 40 CFR 65.106; your local code decides')
})
