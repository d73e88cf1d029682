import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { LeakRuleInput, listLeakRules } from '@glandkeeper/contract/leak-rules'
import { type ExampleRule, exampleRules } from '@glandkeeper/engines/leak/rules/example-rules'
import { nameInWords } from '@glandkeeper/units/format'

type Example = OkOf<typeof listLeakRules>['examples'][number]

const inWords: Partial<Record<ExampleRule['fromMemory'][number], string>> = {
  leakFrom: 'reading that is a leak',
  firstAttemptDays: 'days to the first attempt',
  repairDays: 'days to the repair',
  everyDays: 'days between looks',
  lengthening: 'steps by clean looks',
  difficultEveryDays: 'days between looks at valves difficult to monitor',
}

/** Sets of figures to begin from, each with the paragraph it follows and how far it is to be trusted. */
export const examplesOffered: readonly Example[] = exampleRules.map((example) => ({
  key: example.key,
  paragraph: example.name,
  what: [example.what, fromMemoryInWords(example)].filter(Boolean).join(' '),
  mark: example.mark,
  rule: ruleOfExample(example),
}))

function ruleOfExample({ name, rule }: ExampleRule): LeakRuleInput {
  return {
    name: `After ${name}`,
    ...rule,
    lengthening: [...rule.lengthening],
    byPercent: [...rule.byPercent],
    percentItselfIsAbove: rule.percentItselfIsAbove ?? false,
    // None of the paragraphs names one. Set by us: the site chooses by what flows.
    correlation: 'petroleum industry valve',
  } as LeakRuleInput
}

function fromMemoryInWords({ fromMemory }: ExampleRule): string {
  const named = fromMemory.map((field) => inWords[field] ?? nameInWords(field))
  return named.length === 0 ? '' : `From memory: ${named.join(', ')}.`
}
