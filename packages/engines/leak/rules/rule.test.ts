import { ppmv } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { exampleRules } from './example-rules.ts'
import { type LeakRuleSet, refusedRule } from './rule.ts'

const rule: LeakRuleSet = {
  leakFrom: ppmv(500),
  firstAttemptDays: 5,
  repairDays: 15,
  everyDays: 28,
  lengthening: [
    { cleanLooks: 2, everyDays: 90 },
    { cleanLooks: 6, everyDays: 181 },
  ],
  difficultEveryDays: 365,
  byPercent: [{ atMostPercent: 2, afterPeriods: 1, everyDays: 90 }],
  percentAllowed: 2,
  leastValves: 2,
}

describe('a rule', () => {
  it('that can be followed is taken', () => expect(refusedRule(rule)).toBeNull())

  it.each<[string, Partial<LeakRuleSet>, string]>([
    ['a leak that begins at background', { leakFrom: ppmv(0) }, 'leakFrom'],
    ['a repair before the first attempt', { repairDays: 4 }, 'repairDays'],
    ['half days', { firstAttemptDays: 2.5 }, 'firstAttemptDays'],
    ['days that are no number', { repairDays: Number.NaN }, 'repairDays'],
    ['no days between looks', { everyDays: 0 }, 'everyDays'],
    ['days beyond a century', { difficultEveryDays: 40_000 }, 'difficultEveryDays'],
    ['steps that become shorter', { lengthening: [{ cleanLooks: 2, everyDays: 20 }] }, 'lengthening'],
    [
      'steps out of order',
      {
        lengthening: [
          { cleanLooks: 6, everyDays: 90 },
          { cleanLooks: 2, everyDays: 181 },
        ],
      },
      'lengthening',
    ],
    ['a step without looks', { lengthening: [{ cleanLooks: 0, everyDays: 90 }] }, 'lengthening'],
    ['a step of half a day', { lengthening: [{ cleanLooks: 2, everyDays: 90.5 }] }, 'everyDays'],
    ['more than all leaking', { percentAllowed: 101 }, 'percentAllowed'],
    ['half valves', { leastValves: 1.5 }, 'leastValves'],
    ['valves below none', { leastValves: -1 }, 'leastValves'],
    ['a percent below 0', { byPercent: [{ atMostPercent: -1, afterPeriods: 1, everyDays: 90 }] }, 'atMostPercent'],
    ['no periods', { byPercent: [{ atMostPercent: 2, afterPeriods: 0, everyDays: 90 }] }, 'afterPeriods'],
    ['a percent step of no days', { byPercent: [{ atMostPercent: 2, afterPeriods: 1, everyDays: 0 }] }, 'everyDays'],
  ])('with %s is refused', (_, change, field) => {
    expect(refusedRule({ ...rule, ...change })?.problem.field).toBe(field)
  })
})

describe('the example rules', () => {
  it('can all be followed, and have each a key of its own', () => {
    expect(exampleRules.map((example) => refusedRule(example.rule))).toEqual(exampleRules.map(() => null))
    expect(new Set(exampleRules.map(({ key }) => key)).size).toBe(exampleRules.length)
  })

  it('say which parts are from memory', () => {
    for (const { mark, fromMemory } of exampleRules) {
      expect(mark).toBe('read')
      expect(fromMemory).toContain('difficultEveryDays')
    }
  })
})
