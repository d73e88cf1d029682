import { DaysOffInput } from '@glandkeeper/contract/crews'
import { faultsOf } from '@glandkeeper/contract/problem'
import { describe, expect, it } from 'vitest'
import {
  type DaysOffDraft,
  daysOffOfDraft,
  emptyDaysOff,
  percentInWords,
  percentRange,
  whoseChoices,
  whoseInWords,
} from './days-off-draft.ts'

const crews = [{ crewId: '019a0000-0000-7000-8000-000000000001', name: 'Early shift' }]
const areas = [{ areaCode: 'BH', areaName: 'Boiler house' }]
const stop: DaysOffDraft = { ...emptyDaysOff, reason: 'Summer stop', startsOn: '2027-07-05', endsOn: '2027-07-16' }

describe('whose days off', () => {
  it('are of the site, of a crew or of an area, and say so', () => {
    const choices = whoseChoices(crews, areas)
    expect(choices.map(({ words }) => words)).toEqual(['the site', 'crew Early shift', 'area BH Boiler house'])
    for (const { value, words } of choices)
      expect(whoseInWords(daysOffOfDraft({ ...stop, whose: value }), crews, areas)).toBe(words)
  })

  it('are of a retired crew when the crew is listed no more', () => {
    expect(whoseInWords({ crewId: crews[0]!.crewId, areaCode: null }, [], areas)).toBe('a retired crew')
  })
})

describe('days off as sent', () => {
  it('have the share of the hours, but an area is closed whole', () => {
    expect(daysOffOfDraft({ ...stop, percent: '12,5' }).share).toBe(0.125)
    expect(daysOffOfDraft({ ...stop, percent: '50', whose: 'area BH' })).toMatchObject({ share: 1, areaCode: 'BH', crewId: null })
  })

  it('fit the contract, and name each fault', () => {
    const faultsIn = (draft: DaysOffDraft) => {
      const checked = DaysOffInput.safeParse(daysOffOfDraft(draft))
      return checked.success ? [] : faultsOf(checked.error).map(({ pointer }) => pointer)
    }
    expect(faultsIn(stop)).toEqual([])
    expect(faultsIn({ ...emptyDaysOff, percent: '0' })).toEqual(['#/reason', '#/startsOn', '#/endsOn', '#/share'])
    expect(faultsIn({ ...stop, percent: '' })).toEqual(['#/share'])
    expect(faultsIn({ ...stop, endsOn: '2027-07-04' })).toEqual(['#/endsOn'])
  })
})

it('says shares in hundredths', () => {
  expect([percentInWords(0.07), percentInWords(1), percentInWords(0.125)]).toEqual(['7\u00a0%', '100\u00a0%', '12.5\u00a0%'])
  expect(percentRange()).toBe('From 1\u00a0% to 100\u00a0%')
})
