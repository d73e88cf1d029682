import { expect, it } from 'vitest'
import { limitsOfItem } from './limits-of-item.ts'

const today = '2026-05-04'

it('12 m on hand and four weeks to get more: until 1 June 12 m, then as much as anybody orders', () => {
  const item = { onHand: 12, onOrder: [], leadTimeDays: 28 }
  expect(limitsOfItem(item, today, 0)).toEqual([{ beforeOn: '2026-06-01', amount: 12 }])
})

it('16 m on order for 20 May are there from that day on: until then 12 m, until 1 June 28 m', () => {
  const onOrder = [
    { amount: 8, expectedOn: '2026-05-20' },
    { amount: 8, expectedOn: '2026-05-20' },
  ]
  expect(limitsOfItem({ onHand: 12, onOrder, leadTimeDays: 28 }, today, 0)).toEqual([
    { beforeOn: '2026-05-20', amount: 12 },
    { beforeOn: '2026-06-01', amount: 28 },
  ])
})

it('ten days late, everything comes ten days later: what is on order, and what is ordered today', () => {
  const onOrder = [{ amount: 8, expectedOn: '2026-05-20' }]
  expect(limitsOfItem({ onHand: 12, onOrder, leadTimeDays: 28 }, today, 10)).toEqual([
    { beforeOn: '2026-05-30', amount: 12 },
    { beforeOn: '2026-06-11', amount: 20 },
  ])
})

it('an order that comes after what is ordered today makes no limit', () => {
  const onOrder = [
    { amount: 8, expectedOn: '2026-06-01' },
    { amount: 8, expectedOn: '2026-06-05' },
  ]
  expect(limitsOfItem({ onHand: 12, onOrder, leadTimeDays: 28 }, today, 0)).toEqual([{ beforeOn: '2026-06-01', amount: 12 }])
})

it('an order that was due comes today, or as much later as all is late', () => {
  const item = { onHand: 2, onOrder: [{ amount: 8, expectedOn: '2026-04-20' }], leadTimeDays: 14 }
  expect(limitsOfItem(item, today, 0)).toEqual([{ beforeOn: '2026-05-18', amount: 10 }])
  expect(limitsOfItem(item, today, 7)).toEqual([
    { beforeOn: '2026-05-11', amount: 2 },
    { beforeOn: '2026-05-25', amount: 10 },
  ])
})

it('less than nothing on hand is nothing to use, and is made good first by what comes', () => {
  const item = { onHand: -3, onOrder: [{ amount: 8, expectedOn: '2026-05-10' }], leadTimeDays: 14 }
  expect(limitsOfItem(item, today, 0)).toEqual([
    { beforeOn: '2026-05-10', amount: 0 },
    { beforeOn: '2026-05-18', amount: 5 },
  ])
})

it('what is bought over the counter limits nothing', () => {
  expect(limitsOfItem({ onHand: 0, onOrder: [{ amount: 8, expectedOn: '2026-05-10' }], leadTimeDays: 0 }, today, 0)).toEqual([])
})
