import { moveStock } from '@glandkeeper/contract/stores'
import { expect, test } from 'vitest'
import {
  labelsFrom,
  manyFault,
  movementActs,
  type MovementDraft,
  manyIn,
  movementDraftFor,
  movementsOf,
  takenBack,
} from './movement-draft.ts'

const idOf = (count: number) => `01890000-0000-7000-8000-${String(count).padStart(12, '0')}`
const ITEM = idOf(1)
const ORDER = idOf(2)
const LOT = idOf(3)
const lot = { lotId: LOT, label: 'R-1', batch: 'B-1', amount: 5, expiresOn: null, isExpired: false }
const item = { packSize: 8, onOrder: [{ orderId: ORDER, amount: 16, expectedOn: '2026-05-01' }], lots: [lot] }
const start = movementDraftFor(item as unknown as Parameters<typeof movementDraftFor>[0])

function made(act: (typeof movementActs)[number], change: Partial<MovementDraft> = {}) {
  let count = 100
  const here = { itemId: ITEM, now: new Date('2026-05-04T10:00:00Z'), newId: () => idOf(count++) }
  return movementsOf(act, { ...start, ...change }, here)
}

test('a form begins with what is likely: the open order, so many reels as it was of, and the only reel there is', () => {
  expect(start).toMatchObject({ amount: '8', many: '2', orderId: ORDER, lotId: LOT })
  const two = { ...item, onOrder: [], lots: [lot, lot] } as unknown as Parameters<typeof movementDraftFor>[0]
  expect(movementDraftFor(two)).toMatchObject({ many: '1', orderId: '', lotId: '' })
})

test('an order comes in whole reels, and in one at least', () => {
  expect([manyIn(16, 8), manyIn(20, 8), manyIn(0, 8)]).toEqual(['2', '3', '1'])
})

test('every act makes movements that the contract takes', () => {
  const filled = { label: 'R-12', batch: 'B-7', expectedOn: '2026-06-01', tag: 'BM-3307' }
  for (const act of movementActs) {
    const movements = made(act, filled)
    expect([act, moveStock.body.safeParse({ movements }).error?.issues]).toEqual([act, undefined])
  }
  const back = takenBack(ITEM, idOf(50), { now: new Date('2026-05-04T10:00:00Z'), newId: () => idOf(51) })
  expect(moveStock.body.safeParse({ movements: [back] }).error).toBeUndefined()
})

test('each reel that came is a lot of its own, of one batch and one order', () => {
  const movements = made('receive', { label: 'R-098', many: '3', amount: '7,5', batch: 'B-7', expiresOn: '2028-01-01' })
  expect(movements).toHaveLength(3)
  expect(movements).toMatchObject([{ label: 'R-098' }, { label: 'R-099' }, { label: 'R-100' }])
  for (const movement of movements)
    expect(movement).toMatchObject({ kind: 'received', amount: 7.5, batch: 'B-7', expiresOn: '2028-01-01', orderId: ORDER })
  const ids = movements.flatMap((movement) => [movement.movementId, movement.kind === 'received' ? movement.lotId : ''])
  expect(new Set(ids).size).toBe(6)
})

test('an issue is for a valve, an outage or nobody, and never for two', () => {
  const whom = { tag: ' BM-3307 ', outageId: idOf(9) }
  expect(made('issue', { ...whom, whom: 'a valve' })[0]).toMatchObject({ tag: 'BM-3307', outageId: null })
  expect(made('issue', { ...whom, whom: 'an outage' })[0]).toMatchObject({ tag: null, outageId: idOf(9) })
  expect(made('issue', { ...whom, whom: 'not said' })[0]).toMatchObject({ tag: null, outageId: null })
})

test('without a time it is now; a time that was typed is kept with its offset', () => {
  expect(Date.parse(made('count')[0]?.takenAt ?? '')).toBe(Date.parse('2026-05-04T10:00:00Z'))
  expect(made('count', { takenAt: '2026-05-01T08:30' })[0]?.takenAt).toMatch(/^2026-05-01T08:30:00(Z|[+-]\d\d:\d\d)$/)
})

test('labels are counted on, and a count that is none is told', () => {
  expect(labelsFrom('R-098', 3)).toEqual(['R-098', 'R-099', 'R-100'])
  expect(labelsFrom('north rack', 2)).toEqual(['north rack 1', 'north rack 2'])
  expect(labelsFrom(' R-7 ', 1)).toEqual(['R-7'])
  expect(labelsFrom('', 3)).toEqual([''])
  expect([manyFault('1'), manyFault('60')]).toEqual([null, null])
  for (const many of ['0', '61', '1.5', '', 'two']) expect(manyFault(many)).toBe('From 1 to 60')
  expect(made('receive', { label: 'R', many: 'two' })).toHaveLength(1)
})
