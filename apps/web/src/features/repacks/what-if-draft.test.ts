import { WhatIf } from '@glandkeeper/contract/repack-plans'
import { describe, expect, it } from 'vitest'
import { asksNothing, emptyQuestion, whatIfOfDraft } from './what-if-draft.ts'

const outageId = '019a0000-0000-7000-8000-000000000001'

describe('a question as typed', () => {
  it('asks nothing until something is changed', () => {
    expect(asksNothing(whatIfOfDraft(emptyQuestion))).toBe(true)
    for (const change of [{ percent: '80' }, { lateDays: '30' }, { weeks: { [outageId]: '2' } }, { hasOneMore: true }])
      expect(asksNothing(whatIfOfDraft({ ...emptyQuestion, ...change }))).toBe(false)
  })

  it('is sent as shares, days and slips, without outages that stay', () => {
    const typed = { ...emptyQuestion, weeks: { [outageId]: '-3', other: '0', third: ' ' }, percent: '80', lateDays: '30' }
    const sent = whatIfOfDraft(typed)
    expect(sent).toEqual({ slips: [{ outageId, weeks: -3 }], hoursShare: 0.8, cordLateDays: 30, oneMoreOutage: null })
    expect(WhatIf.safeParse(sent).success).toBe(true)
  })

  it('is refused where a figure is none', () => {
    const refused = WhatIf.safeParse(
      whatIfOfDraft({ ...emptyQuestion, weeks: { [outageId]: 'x' }, percent: '', lateDays: '1.5' }),
    )
    expect(refused.error?.issues.map(({ path }) => path.join('/'))).toEqual(['slips/0/weeks', 'hoursShare', 'cordLateDays'])
  })
})
