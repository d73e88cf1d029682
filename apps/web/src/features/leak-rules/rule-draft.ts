import { Correlation, type LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import type { z } from 'zod'
import { figureOf } from '../readings/index.ts'
import type { RuleBody } from './queries.ts'

/** Figures that stand once in a rule. */
export const ruleFigures = [
  'leakFrom',
  'firstAttemptDays',
  'repairDays',
  'everyDays',
  'difficultEveryDays',
  'percentAllowed',
  'leastValves',
] as const
export type RuleFigure = (typeof ruleFigures)[number]

/** One step as typed; `row` tells it from its neighbours while rows come and go. */
export interface CleanStep {
  readonly row: number
  readonly cleanLooks: string
  readonly everyDays: string
}

export interface PercentStep {
  readonly row: number
  readonly atMostPercent: string
  readonly afterPeriods: string
  readonly everyDays: string
}

/** A rule as typed, before it is known to fit the contract. */
export type RuleDraft = Readonly<Record<RuleFigure, string>> & {
  readonly name: string
  readonly lengthening: readonly CleanStep[]
  readonly byPercent: readonly PercentStep[]
  readonly percentItselfIsAbove: boolean
  readonly correlation: z.infer<typeof Correlation>
}

export const emptyRule: RuleDraft = {
  name: '',
  leakFrom: '',
  firstAttemptDays: '',
  repairDays: '',
  everyDays: '',
  difficultEveryDays: '',
  percentAllowed: '',
  leastValves: '0',
  lengthening: [],
  byPercent: [],
  percentItselfIsAbove: false,
  correlation: 'petroleum industry valve',
}

const asText = (value: number | null) => (value === null ? '' : String(value))

export function ruleDraftOf(rule: LeakRuleInput): RuleDraft {
  return {
    name: rule.name,
    leakFrom: asText(rule.leakFrom),
    firstAttemptDays: asText(rule.firstAttemptDays),
    repairDays: asText(rule.repairDays),
    everyDays: asText(rule.everyDays),
    difficultEveryDays: asText(rule.difficultEveryDays),
    percentAllowed: asText(rule.percentAllowed),
    leastValves: asText(rule.leastValves),
    lengthening: rule.lengthening.map(({ cleanLooks, everyDays }, row) => ({
      row,
      cleanLooks: asText(cleanLooks),
      everyDays: asText(everyDays),
    })),
    byPercent: rule.byPercent.map(({ atMostPercent, afterPeriods, everyDays }, row) => ({
      row,
      atMostPercent: asText(atMostPercent),
      afterPeriods: asText(afterPeriods),
      everyDays: asText(everyDays),
    })),
    percentItselfIsAbove: rule.percentItselfIsAbove,
    correlation: rule.correlation,
  }
}

/** An empty figure is no number, which the contract says in words; no percent allowed is a rule without one. */
const figure = (text: string) => figureOf(text) ?? Number.NaN

export function ruleOfDraft(draft: RuleDraft): RuleBody {
  return {
    name: draft.name,
    leakFrom: figure(draft.leakFrom),
    firstAttemptDays: figure(draft.firstAttemptDays),
    repairDays: figure(draft.repairDays),
    everyDays: figure(draft.everyDays),
    lengthening: draft.lengthening.map(({ cleanLooks, everyDays }) => ({
      cleanLooks: figure(cleanLooks),
      everyDays: figure(everyDays),
    })),
    difficultEveryDays: figure(draft.difficultEveryDays),
    byPercent: draft.byPercent.map(({ atMostPercent, afterPeriods, everyDays }) => ({
      atMostPercent: figure(atMostPercent),
      afterPeriods: figure(afterPeriods),
      everyDays: figure(everyDays),
    })),
    percentAllowed: figureOf(draft.percentAllowed),
    percentItselfIsAbove: draft.percentItselfIsAbove,
    leastValves: figure(draft.leastValves),
    correlation: draft.correlation,
  }
}

/** A number no row has. */
export function nextRow(steps: readonly { readonly row: number }[]): number {
  return Math.max(-1, ...steps.map(({ row }) => row)) + 1
}
