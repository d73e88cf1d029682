import type { Outage } from '@glandkeeper/contract/outages'
import { expect, it } from 'vitest'
import { outageDays } from './days-in-words.ts'

const outage = (earliestOn: string, likelyOn: string, latestOn: string, days: number) =>
  outageDays({ earliestOn, likelyOn, latestOn, days: days as Outage['days'] })

it('says when an outage begins, how sure that is, and how long it is', () => {
  expect(outage('2027-06-02', '2027-06-09', '2027-06-16', 5)).toBe(
    'Likely from 9 June 2027, for 5 days. First day not settled: 2 June 2027 to 16 June 2027.',
  )
  expect(outage('2027-06-09', '2027-06-09', '2027-06-09', 1)).toBe('From 9 June 2027, settled; 1 day.')
})
