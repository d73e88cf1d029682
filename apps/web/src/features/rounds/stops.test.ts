import { aCorrection, aLeak } from '@glandkeeper/fixtures/a-reading'
import type { RoundStop } from '@glandkeeper/contract/rounds'
import { expect, test } from 'vitest'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { fateOf, nextOpenStop, stretchesOf } from './stops.ts'

const id = (n: number) => `019a0000-0000-7000-8000-00000000000${n}`
const stop = (n: number, change: Partial<RoundStop> = {}) =>
  ({
    position: n,
    valveId: id(n),
    tag: `BH-${n}`,
    areaCode: 'BH',
    areaName: 'Boiler house',
    level: 0,
    visit: null,
    ...change,
  }) as RoundStop
const waits = (event: OutboxEntry['event']): OutboxEntry => ({
  n: 1,
  event,
  personId: id(9),
  tag: 'BH-1',
  says: '',
  state: 'waiting',
  problem: null,
})
const at = '2026-05-04T10:00:00Z'
const visited = { at, kind: 'leak.seen', missed: null } as const

test('a stop is open until there is an entry, here or on the server, that was not taken back', () => {
  const leak = aLeak({ valveId: id(1), takenAt: at })
  const back = aCorrection({ valveId: id(1), takenAt: at, corrects: leak.id, replacement: null })
  expect(fateOf(stop(1), [])).toBe('open')
  expect(fateOf(stop(1), [waits(leak)])).toBe('on this device')
  expect(fateOf(stop(2), [waits(leak)])).toBe('open')
  expect(fateOf(stop(1), [waits(leak), waits(back)])).toBe('open')
  expect(fateOf(stop(1, { visit: visited }), [])).toBe('visited')
  expect(fateOf(stop(1, { visit: { at, kind: 'visit.missed', missed: 'too hot' } }), [])).toBe('missed')
})

test('the next stop is the next open one, then those left out before, then none', () => {
  const stops = [stop(1), stop(2, { visit: visited }), stop(3), stop(4, { visit: visited })]
  expect(nextOpenStop({ stops }, id(1), [])?.tag).toBe('BH-3')
  expect(nextOpenStop({ stops }, id(3), [])?.tag).toBe('BH-1')
  expect(nextOpenStop({ stops: [stop(1)] }, id(1), [])).toBeNull()
})

test('stops stand together as long as neither area nor level changes', () => {
  const stops = [stop(1), stop(2), stop(3, { level: 1 }), stop(4, { level: 0 })]
  expect(stretchesOf(stops).map(({ level, stops: { length } }) => [level, length])).toEqual([
    [0, 2],
    [1, 1],
    [0, 1],
  ])
})
