import { ppmv } from '@glandkeeper/units/quantity'
import type { Source } from '../../source.ts'
import type { LeakRuleSet } from './rule.ts'

/** A rule to begin from. A site reads its own permit and the text in force, and sets its rule by that. */
export interface ExampleRule {
  readonly key: string
  /** The published paragraph it follows. */
  readonly name: string
  /** Of everything that `fromMemory` does not name. */
  readonly mark: Source['mark']
  readonly fromMemory: readonly (keyof LeakRuleSet)[]
  readonly what: string
  readonly rule: LeakRuleSet
}

/**
 * Calendar periods as days, by the shortest of each: no month, quarter, half year or year passes without a look.
 *
 * @source SRC-761 shortest calendar periods (docs/sources.md)
 */
const [MONTH, QUARTER, HALF_YEAR, YEAR] = [28, 90, 181, 365]

/** Monthly; quarterly after two months without a leak; back to monthly with the next one. */
const monthlyThenQuarterly: LeakRuleSet = {
  leakFrom: ppmv(10_000),
  firstAttemptDays: 5,
  repairDays: 15,
  everyDays: MONTH,
  lengthening: [{ cleanLooks: 2, everyDays: QUARTER }],
  difficultEveryDays: YEAR,
  byPercent: [],
  percentAllowed: null,
  leastValves: 0,
}

/**
 * Rules of leak monitoring as published in the United States, as examples. None is legal advice, and texts change.
 *
 * @source SRC-755 to SRC-759 the paragraphs · SRC-760 parts from memory · SRC-761 periods as days (docs/sources.md)
 */
export const exampleRules: readonly ExampleRule[] = [
  {
    key: '61.242-7',
    name: '40 CFR 61.242-7',
    mark: 'read',
    fromMemory: ['difficultEveryDays'],
    what: 'Leak from 10,000 ppm. Monthly; each quarter after two months without a leak, until the next leak. First attempt within 5 days, repair within 15.',
    rule: monthlyThenQuarterly,
  },
  {
    key: '264.1062',
    name: '40 CFR 264.1057 and 264.1062',
    mark: 'read',
    fromMemory: ['difficultEveryDays'],
    what: 'As 61.242-7, and by percent leaking: after two quarters in a row at 2 % or less each half year, after five once a year, above 2 % monthly again.',
    rule: {
      ...monthlyThenQuarterly,
      byPercent: [
        { atMostPercent: 2, afterPeriods: 2, everyDays: HALF_YEAR },
        { atMostPercent: 2, afterPeriods: 5, everyDays: YEAR },
      ],
      percentAllowed: 2,
    },
  },
  {
    key: '60.483-1',
    name: '40 CFR 60.483-1',
    mark: 'read',
    fromMemory: ['firstAttemptDays', 'repairDays', 'difficultEveryDays'],
    what: 'Leak from 10,000 ppm. All valves tested within a week, once a year; no more than 2.0 % may leak.',
    rule: { ...monthlyThenQuarterly, everyDays: YEAR, lengthening: [], percentAllowed: 2 },
  },
  {
    key: '60.483-2',
    name: '40 CFR 60.483-2',
    mark: 'read',
    fromMemory: ['leakFrom', 'firstAttemptDays', 'repairDays', 'everyDays', 'lengthening', 'difficultEveryDays'],
    what: 'After two quarters in a row at 2.0 % or less one quarter is skipped, after five three are; above 2.0 % back to the beginning.',
    rule: {
      ...monthlyThenQuarterly,
      byPercent: [
        { atMostPercent: 2, afterPeriods: 2, everyDays: HALF_YEAR },
        { atMostPercent: 2, afterPeriods: 5, everyDays: YEAR },
      ],
      percentAllowed: 2,
    },
  },
  {
    key: '65.106',
    name: '40 CFR 65.106',
    mark: 'read',
    fromMemory: ['firstAttemptDays', 'repairDays', 'difficultEveryDays'],
    what: 'Leak from 500 ppm. Monthly while at least two valves and at least 2 % leak, each quarter below that. Longer periods below 1 % are not in this example.',
    rule: {
      ...monthlyThenQuarterly,
      leakFrom: ppmv(500),
      lengthening: [],
      byPercent: [{ atMostPercent: 2, afterPeriods: 1, everyDays: QUARTER }],
      percentAllowed: 2,
      leastValves: 2,
      percentItselfIsAbove: true,
    },
  },
  {
    key: '63.1006',
    name: '40 CFR 63.1006',
    mark: 'read',
    fromMemory: ['firstAttemptDays', 'repairDays', 'difficultEveryDays'],
    what: 'Leak from 10,000 ppm. Monthly; each quarter after two months without a leak.',
    rule: monthlyThenQuarterly,
  },
]
