import type { LeakHistory } from '@glandkeeper/contract/leaks'
import { expect, test } from 'vitest'
import { figuresOf, laterInWords, stoodInWords, worstInWords } from './history-words.ts'

const history = {
  leaks: [{}, {}],
  watchedSince: '2021-01-20T23:30:00.000Z',
  daysWatched: 2137.8,
  daysLeaking: 180.2,
  nips: 33,
  nipsPerDryMonth: 0.513,
  leaksPerThousandMonths: 1355.9,
} as unknown as LeakHistory
const said = (change: Partial<LeakHistory> = {}) =>
  figuresOf({ ...history, ...change }, 'Europe/Berlin').map(({ name, says }) => `${name} ${says}`)

test('a valve in figures, by the calendar of the site', () => {
  expect(said()).toEqual([
    'watched since 21 Jan 2021, 5.8 years',
    'leaks 2',
    'days leaking 180',
    'nips in a dry month 0.5',
    'leaks in 1,000 valve-months 1,356',
  ])
})

test('what is not known is left out, and hours of leaking are not nought days', () => {
  expect(said({ nipsPerDryMonth: null, leaksPerThousandMonths: null })).toHaveLength(3)
  expect(said({ daysLeaking: 0.2 as LeakHistory['daysLeaking'] })).toContain('days leaking under 1')
  expect(said({ daysLeaking: 0 as LeakHistory['daysLeaking'] })).toContain('days leaking 0')
  expect(said({ watchedSince: null })).toEqual([])
})

test('time between two steps in the unit a person would say', () => {
  const after = (iso: string) => laterInWords('2026-03-02T08:00:00Z', iso)
  expect(after('2026-03-02T08:00:00Z')).toBe('at once')
  expect(after('2026-03-02T08:03:00Z')).toBe('3\u00a0min later')
  expect(after('2026-03-02T12:00:00Z')).toBe('4\u00a0hours later')
  expect(after('2026-03-30T08:00:00Z')).toBe('28\u00a0days later')
})

test('how long it stood, to the look that saw it gone or to now', () => {
  const now = new Date('2026-05-04T08:00:00Z')
  const stood = (verifiedAt: string | null) => stoodInWords({ openedAt: '2026-04-04T08:00:00Z', verifiedAt }, now)
  expect(stood(null)).toBe('30 days so far')
  expect(stood('2026-04-14T08:00:00Z')).toBe('10 days')
  expect(stood('2026-04-04T08:03:00Z')).toBe('gone on the same visit')
})

test('the worst by eye and by meter', () => {
  expect(worstInWords({ worst: 'run', worstScreening: 12_500 as never })).toBe('run, 12,500\u00a0ppmv')
  expect(worstInWords({ worst: null, worstScreening: null })).toBe('not said')
})
