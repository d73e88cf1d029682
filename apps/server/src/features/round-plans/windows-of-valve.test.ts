import { describe, expect, it } from 'vitest'
import { settingValuesOf } from '../settings/index.ts'
import { minutesOf, type PlannedValve, windowsOfValve } from './windows-of-valve.ts'

const settings = settingValuesOf([])
const frame = { startsOn: '2026-05-04', weeks: 20, firstFreeWeek: 0, timeZone: 'Europe/London', settings }
const DAY = 86_400_000
const seen = new Date('2026-05-01T09:00:00Z')
/** Next look by a rule after so many days, with the routine looks that were weighed. */
const look = (rule: string, days: number, weighed: Readonly<Record<string, number>>): Partial<PlannedValve> => ({
  nextLookAt: new Date(seen.getTime() + days * DAY),
  nextLook: JSON.stringify({
    rule,
    weighed: Object.entries(weighed).map(([name, after]) => ({ rule: name, at: seen.getTime() + after * DAY })),
  }),
})
const valve = (known: Partial<PlannedValve>): PlannedValve => ({
  access: 'floor',
  criticality: 'ordinary',
  lastSeenAt: seen,
  nextLookAt: null,
  nextLook: null,
  wasMissed: false,
  ...known,
})
const windows = (known: Partial<PlannedValve>) =>
  windowsOfValve(valve(known), frame).map(({ due, earliest, latest, cause }) => [due, earliest, latest, cause])

describe('visits of a valve from what its state says', () => {
  it('follow the shorter of the routine looks, counted in weeks of the site from the Monday of the plan', () => {
    expect(windows(look('leak interval', 42, { 'leak interval': 42, 'longest time between looks': 91 }))).toEqual([
      [5, 3, 7, 'leak interval'],
      [11, 9, 13, 'leak interval'],
      [17, 15, 19, 'leak interval'],
    ])
  })

  it('of a follow-up hold to its week and are routine after it', () => {
    expect(windows(look('after a nip', 4, { 'after a nip': 4, 'longest time between looks': 91 }))).toEqual([
      [0, 0, 0, 'after a nip'],
      [13, 10, 16, 'longest time between looks'],
    ])
  })

  it('of one that is overdue, was missed, or that nobody has seen, are caught up with', () => {
    const overdue = look('longest time between looks', -20, { 'longest time between looks': 91 })
    expect(windows(overdue)[0]).toEqual([-4, 0, 1, 'overdue'])
    expect(windows({ ...overdue, wasMissed: true })[0]).toEqual([-4, 0, 1, 'missed on a round'])
    expect(windows({ lastSeenAt: null })[0]).toEqual([0, 0, 3, 'never seen'])
  })

  it('come once a week at most, as the site allows, whatever the reserve says', () => {
    expect(windows(look('reserve', 7, { reserve: 7, 'leak interval': 3, 'longest time between looks': 91 })).length).toBe(20)
  })
})

it.each([
  ['floor', false, 5],
  ['floor', true, 8],
  ['platform', false, 6],
  ['ladder', false, 10],
  ['scaffold', true, 28],
  ['confined space', false, 50],
])('a visit by %s, a follow-up or not (%s), takes %i minutes', (access, isFollowUp, minutes) => {
  expect(minutesOf(access, isFollowUp, settings)).toBe(minutes)
})
