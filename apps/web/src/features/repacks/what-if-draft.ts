import type { BodyIn } from '@glandkeeper/contract/endpoint'
import type { makeRepackPlan } from '@glandkeeper/contract/repack-plans'
import { figureOf } from '../readings/index.ts'
import { emptyOutage, type OutageDraft, outageOfDraft } from './outage-draft.ts'

type WhatIfBody = NonNullable<BodyIn<typeof makeRepackPlan>['whatIf']>

/** A question as typed, before it is known to fit the contract. */
export interface WhatIfDraft {
  /** Weeks later, by outage; empty or nought does not move. */
  readonly weeks: Readonly<Record<string, string>>
  readonly percent: string
  readonly lateDays: string
  readonly hasOneMore: boolean
  readonly oneMore: OutageDraft
}

export const emptyQuestion: WhatIfDraft = {
  weeks: {},
  percent: '100',
  lateDays: '0',
  hasOneMore: false,
  oneMore: emptyOutage,
}

/** What is sent. What is no figure stays none, which the contract says in words. */
export function whatIfOfDraft({ weeks, percent, lateDays, hasOneMore, oneMore }: WhatIfDraft): WhatIfBody {
  const slips = Object.entries(weeks).flatMap(([outageId, typed]) => {
    const figure = figureOf(typed) ?? 0
    return figure === 0 ? [] : [{ outageId, weeks: figure }]
  })
  return {
    slips,
    hoursShare: (figureOf(percent) ?? Number.NaN) / 100,
    cordLateDays: figureOf(lateDays) ?? Number.NaN,
    oneMoreOutage: hasOneMore ? outageOfDraft(oneMore) : null,
  }
}

/** Nothing to answer: everything is as it is. */
export function asksNothing({ slips, hoursShare, cordLateDays, oneMoreOutage }: WhatIfBody): boolean {
  return slips.length === 0 && hoursShare === 1 && cordLateDays === 0 && oneMoreOutage === null
}
