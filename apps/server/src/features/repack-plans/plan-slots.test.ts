import { settingKeys, settings, type SettingValues } from '@glandkeeper/contract/settings'
import { describe, expect, it } from 'vitest'
import { type PlannedOutage, planSlots, type SlotFrame } from './plan-slots.ts'

const usual = Object.fromEntries(settingKeys.map((key) => [key, settings[key].usually])) as unknown as SettingValues
const stop: PlannedOutage = {
  id: 'a',
  name: 'Stop',
  earliestOn: '2026-06-29',
  likelyOn: '2026-07-06',
  latestOn: '2026-07-20',
  days: 7,
  fittingHours: 40,
  scaffoldingHours: 8,
  isolatingHours: 12,
  areaCodes: '["BH"]',
}
const frame: SlotFrame = { startsOn: '2026-05-06', weeks: 12, settings: usual, daysOff: [], outages: [stop], whatIf: null }
const nothing = { slips: [], hoursShare: 1, cordLateDays: 0, oneMoreOutage: null } as unknown as NonNullable<SlotFrame['whatIf']>
const idsOf = (changed: Partial<SlotFrame>) => planSlots({ ...frame, ...changed }).map(({ slotId }) => slotId)

describe('slots of a plan', () => {
  it('are fortnights from a fixed Monday and outages, in order of their likely day', () => {
    expect(idsOf({})).toEqual([
      'fortnight:2026-05-18',
      'fortnight:2026-06-01',
      'fortnight:2026-06-15',
      'fortnight:2026-06-29',
      'outage:a',
      'fortnight:2026-07-13',
      'fortnight:2026-07-27',
    ])
  })

  it('keep their names whatever day the plan starts on, and one that has begun is none of it', () => {
    expect(idsOf({ startsOn: '2026-05-18' })[0]).toBe('fortnight:2026-05-18')
    expect(idsOf({ startsOn: '2026-05-19' })[0]).toBe('fortnight:2026-06-01')
  })

  it('have fewer hours where the site is off', () => {
    const week = ['2026-06-01', '2026-06-02', '2026-06-03', '2026-06-04', '2026-06-05']
    const slots = planSlots({ ...frame, daysOff: [{ days: week, share: 1 }] })
    expect(slots.slice(0, 3).map(({ hours }) => hours.fitting)).toEqual([24, 12, 24])
  })

  it('leave out an outage that likely begins after the plan ends, or before it starts', () => {
    expect(idsOf({ weeks: 8 })).not.toContain('outage:a')
    expect(idsOf({ startsOn: '2026-07-07' })).not.toContain('outage:a')
  })

  it('are moved by whole weeks, scaled and added to as a question asks', () => {
    const oneMoreOutage = { name: 'More', earliestOn: '2026-06-08', likelyOn: '2026-06-08', latestOn: '2026-06-08', days: 2 }
    const whatIf = {
      ...nothing,
      slips: [{ outageId: 'a', weeks: 2 }],
      hoursShare: 0.5,
      oneMoreOutage: { ...oneMoreOutage, hours: { fitting: 9, scaffolding: 0, isolating: 3 }, areaCodes: [] },
    } as unknown as typeof nothing
    const slots = planSlots({ ...frame, whatIf })
    expect(slots.find(({ slotId }) => slotId === 'outage:a')).toMatchObject({
      earliestOn: '2026-07-13',
      likelyOn: '2026-07-20',
      latestOn: '2026-08-03',
      lastOn: '2026-07-26',
      hours: { fitting: 20, scaffolding: 4, isolating: 6 },
      areaCodes: ['BH'],
    })
    expect(slots.find(({ name }) => name === 'More')).toMatchObject({
      likelyOn: '2026-06-08',
      hours: { fitting: 4.5, isolating: 1.5 },
    })
  })
})
