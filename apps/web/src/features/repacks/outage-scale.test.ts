import { describe, expect, it } from 'vitest'
import { outageScale } from './outage-scale.ts'

const outage = (likelyOn: string, days: number, earliestOn = likelyOn, latestOn = likelyOn) => ({
  earliestOn,
  likelyOn,
  latestOn,
  days,
})

describe('the scale of a list of outages', () => {
  it('runs from the month of the earliest to the end of the month of the latest', () => {
    const outages = [outage('2027-04-20', 15), outage('2027-01-11', 7, '2027-01-04')]
    const { months, daysOf } = outageScale(outages, 132)
    // January to May is 151 days, drawn on 120 px after an edge of 6.
    expect(months.map(({ x }) => Math.round(x))).toEqual([6, 31, 53, 78, 101, 126])
    expect(daysOf(outage('2027-01-11', 7, '2027-01-04', '2027-01-18'))).toEqual({
      earliest: 6 + (3 / 151) * 120,
      likely: 6 + (10 / 151) * 120,
      likelyEnd: 6 + (17 / 151) * 120,
      latestEnd: 6 + (24 / 151) * 120,
    })
  })

  it('names months where there is room, the first and each January with its year, and never the end', () => {
    const names = (width: number) =>
      outageScale([outage('2026-11-02', 7), outage('2027-02-01', 7)], width).months.map(({ name }) => name)
    expect(names(600)).toEqual(['Nov 26', 'Dec', 'Jan 27', 'Feb', null])
    expect(names(132)).toEqual(['Nov 26', null, 'Jan 27', null, null])
  })
})
