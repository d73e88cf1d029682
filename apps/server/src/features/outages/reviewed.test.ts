import { expect, it } from 'vitest'
import type { Said } from '../glands/index.ts'
import { type EntryAfter, reviewed, summedUp } from './reviewed.ts'

const at = (day: number, hour = 9) => new Date(Date.UTC(2026, 4, day, hour))
const entry = (day: number, said: object, crewName: string | null = 'Steam crew'): EntryAfter => ({
  said: said as Said,
  takenAt: at(day),
  crewName,
})
const repack = (day: number, more: object = {}) =>
  entry(day, { kind: 'packing.renewed', family: 'braided graphite', proved: true, ...more })
const leak = (day: number, grade: string) => entry(day, { kind: 'leak.seen', leak: grade })
const frame = { begins: at(4, 0), ends: at(13, 0), followUpDays: 3, dayOf: (moment: Date) => moment.toISOString().slice(0, 10) }
const judged = (entries: readonly EntryAfter[], now = at(40)) => reviewed(entries, { ...frame, now })

it('a repack before the outage, or after it, is none of it', () => {
  expect(judged([repack(3), repack(13)])).toMatchObject({ repackedOn: null, followUp: null })
  expect(judged([repack(4)])).toMatchObject({ repackedOn: '2026-05-04', family: 'braided graphite', isProved: true })
})

it.each([
  ['a drip on the 30th day less one', leak(33, 'drip'), 29],
  ['a drip thirty days later', leak(34, 'drip'), null],
  ['a gland found dry', leak(6, 'dry'), null],
  ['a damp one', leak(6, 'damp'), null],
  ['a nip because it leaked', entry(6, { kind: 'gland.nipped', leakBefore: 'weep' }), 2],
])('%s counts as a leak after so many days', (_, after, expected) => {
  expect(judged([repack(4), after]).leakedAfterDays).toBe(expected)
})

it('the follow-up is due until its day is over, then lost; whoever was there made it', () => {
  expect(judged([repack(5)], at(8, 20))).toMatchObject({ followUp: 'due', followUpOn: '2026-05-08' })
  expect(judged([repack(5)], at(9, 10)).followUp).toBe('lost')
  expect(judged([repack(5), leak(20, 'dry')]).followUp).toBe('made')
  expect(judged([repack(5), entry(8, { kind: 'visit.missed', reason: 'too hot' })]).followUp).toBe('lost')
})

it('the contractor the record names did it, else the crew of whoever entered it', () => {
  expect(judged([repack(5)]).doneBy).toBe('Steam crew')
  expect(judged([repack(5, { doneBy: { kind: 'own crew', name: '' } })]).doneBy).toBe('Steam crew')
  expect(judged([repack(5, { doneBy: { kind: 'own crew', name: 'Night shift' } })]).doneBy).toBe('Night shift')
  expect(judged([repack(5, { doneBy: { kind: 'contractor', name: 'North' } })]).doneBy).toBe('contractor North')
})

it('sums up what was planned, done, left and done without a plan', () => {
  const valve = (isPlanned: boolean, entries: readonly EntryAfter[]) => ({
    tag: 'BH-1',
    description: '',
    areaCode: 'BH',
    isPlanned,
    ...judged(entries),
  })
  const valves = [
    valve(true, [repack(4), leak(6, 'run')]),
    valve(true, []),
    valve(false, [repack(5, { family: 'PTFE cord' }), leak(8, 'dry')]),
  ]
  expect(summedUp(valves)).toMatchObject({ planned: 2, done: 1, notDone: 1, extra: 1, leaked: 1, followUpLost: 0 })
  expect(summedUp(valves).byFamily).toEqual([
    { name: 'PTFE cord', done: 1, leaked: 0, followUpLost: 0 },
    { name: 'braided graphite', done: 1, leaked: 1, followUpLost: 0 },
  ])
})
