import { type Outage, OutageInput } from '@glandkeeper/contract/outages'
import { describe, expect, it } from 'vitest'
import { emptyOutage, outageDraftOf, outageOfDraft, slipped } from './outage-draft.ts'

const outageId = '019a0000-0000-7000-8000-000000000001'
const fields = {
  name: 'Summer stop',
  earliestOn: '2027-06-02',
  likelyOn: '2027-06-09',
  latestOn: '2027-06-23',
  days: 12,
  hours: { fitting: 240, scaffolding: 60, isolating: 80.5 },
  areaCodes: ['BM'],
}
const outage = { outageId, ...fields, state: 'planned', startedOn: null, endedOn: null, revision: 3, repacks: 4 } as Outage

describe('an outage as typed', () => {
  it('is sent as it was read where nothing is changed', () => {
    expect(outageOfDraft(outageDraftOf(outage))).toEqual(fields)
    expect(OutageInput.safeParse(outageOfDraft(outageDraftOf(outage))).success).toBe(true)
  })

  it('is settled where only the likely day is typed', () => {
    const typed = { ...outageDraftOf(outage), earliestOn: '', latestOn: '' }
    expect(outageOfDraft(typed)).toMatchObject({ earliestOn: '2027-06-09', likelyOn: '2027-06-09', latestOn: '2027-06-09' })
  })

  it('is refused empty, at each field that is needed', () => {
    const refused = OutageInput.safeParse(outageOfDraft(emptyOutage))
    const places = refused.error?.issues.map(({ path }) => path.join('/')) ?? []
    for (const place of ['name', 'likelyOn', 'days', 'hours/fitting', 'hours/scaffolding', 'hours/isolating'])
      expect(places).toContain(place)
  })

  it('slips with all its days by whole weeks, later and earlier, over a change of the clock too', () => {
    expect(slipped(outage, 3)).toEqual({ ...fields, earliestOn: '2027-06-23', likelyOn: '2027-06-30', latestOn: '2027-07-14' })
    expect(slipped(outage, -14)).toMatchObject({ earliestOn: '2027-02-24', likelyOn: '2027-03-03', latestOn: '2027-03-17' })
  })
})
