import type { PlanTotals, RepackSlot, WhatIf } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { describe, expect, it } from 'vitest'
import { byChanceIfKept, keptInWords, whatIfInWords } from './what-if-words.ts'

const a = '019a0000-0000-7000-8000-000000000001'
const slots = [{ slotId: `outage:${a}`, kind: 'outage', name: 'Summer stop' } as unknown as RepackSlot]
const nothing = { slips: [], hoursShare: 1, cordLateDays: 0, oneMoreOutage: null } as unknown as WhatIf
const oneMore = { name: 'Short stop', earliestOn: '2027-03-01', likelyOn: '2027-03-01', latestOn: '2027-03-01' }

describe('a question in words', () => {
  it.each([
    [{}, 'If nothing changes'],
    [{ slips: [{ outageId: a, weeks: 3 }] }, 'If Summer stop begins 3 weeks later'],
    [{ slips: [{ outageId: a, weeks: -1 }] }, 'If Summer stop begins 1 week earlier'],
    [{ hoursShare: 0.8, cordLateDays: 1 }, 'If 80 % of the hours are there and cord and parts come 1 day later'],
    [
      { slips: [{ outageId: a, weeks: 2 }], hoursShare: 1.2, oneMoreOutage: oneMore },
      'If Summer stop begins 2 weeks later, 120 % of the hours are there, and there is one more outage, Short stop, from 1 Mar 2027',
    ],
  ])('%j', (change, says) => {
    expect(whatIfInWords({ ...nothing, ...change } as WhatIf, slots).replaceAll('\u00a0', ' ')).toBe(says)
  })
})

describe('keeping a plan beside planning anew', () => {
  const totals = (expectedOut: number, total: number) => ({ expectedOut, cost: { total } }) as unknown as PlanTotals
  const kept = (overHours: string[], short: string[]) => ({ totals: totals(10.3, 40), overHours, short })

  it('has both figures, and says where planning anew is not worth it', () => {
    const figures =
      'If the plan is kept, 10.3 valves are to be expected to run out of travel before their repack; planned anew, 7.0.'
    expect(keptInWords(kept([], []), totals(7, 30))).toBe(figures)
    expect(keptInWords(kept([], []), totals(7, 39.9))).toBe(`${figures} Planning anew saves next to nothing.`)
  })

  it('says that its figures cannot be had where hours or cord are not there', () => {
    for (const broken of [kept(['outage:a'], []), kept([], ['PTFE braid'])])
      expect(keptInWords(broken, totals(12, 50))).toMatch(/hours or cord that are not there, as named below/)
  })
})

describe('who runs out if the plan is kept', () => {
  const repack = (tag: string, kept: number | null) =>
    ({ tag, chanceOut: 0.1, ifKept: kept === null ? null : { slotId: null, chanceOut: kept } }) as PlannedRepack

  it('is sorted by the chance if kept, without valves the plan before did not have', () => {
    const ranked = byChanceIfKept([repack('A', 0.2), repack('B', null), repack('C', 0.9), repack('D', 0.5)], 2)
    expect(ranked.map(({ tag }) => tag)).toEqual(['C', 'D'])
  })
})
