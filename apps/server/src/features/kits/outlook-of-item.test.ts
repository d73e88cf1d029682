import { describe, expect, it } from 'vitest'
import { outlookOfItem } from './outlook-of-item.ts'

type Item = Parameters<typeof outlookOfItem>[0]

const aLot = (amount: number, expiresOn: string | null = null) => ({
  lotId: 'lot',
  label: 'R-1',
  batch: 'B-1',
  amount,
  expiresOn,
  isExpired: expiresOn !== null && expiresOn < '2026-05-04',
})

/** A cord in reels of 8 m, two weeks to come, of which 4 m are to be kept. */
const anItem = (about: Partial<Record<keyof Item, unknown>> = {}) =>
  ({ itemId: 'item', unit: 'm', lots: [], onOrder: [], leadTimeDays: 14, leastStock: 4, packSize: 8, ...about }) as Item
const stop = (amount: number, on = '2026-06-09') => ({ amount, on, for: 'Summer stop' })
const ahead = (item: Item, ...wanted: ReturnType<typeof stop>[]) => outlookOfItem(item, wanted, '2026-05-04', '2027-05-03')
const told = (item: Item, ...wanted: ReturnType<typeof stop>[]) =>
  ahead(item, ...wanted).balances.map(({ on, balance, says }) => [on, balance, says.replaceAll('\u00a0', ' ')])

describe('an item over the time of the plan', () => {
  it('9 m, of which the summer stop takes 6: 3 m are left, 1 below the least, so 8 m are ordered two weeks before', () => {
    const item = anItem({ lots: [aLot(9)] })
    expect(told(item, stop(6))).toEqual([
      ['2026-05-04', 9, '9 m on hand'],
      ['2026-06-09', 3, '6 m for Summer stop'],
    ])
    expect(ahead(item, stop(6))).toMatchObject({
      demand: 6,
      belowLeastOn: '2026-06-09',
      shortOn: null,
      shortBy: 0,
      orderBy: '2026-05-26',
      isLate: false,
      orderAmount: 8,
      expires: [],
    })
  })

  it('is short where the stop takes more than there is, and late where nothing ordered today comes in time', () => {
    expect(ahead(anItem({ lots: [aLot(2)] }), stop(6, '2026-05-11'))).toMatchObject({
      belowLeastOn: '2026-05-04',
      shortOn: '2026-05-11',
      shortBy: 4,
      orderBy: '2026-04-20',
      isLate: true,
      orderAmount: 8,
    })
  })

  it('asks for nothing where there is enough', () => {
    expect(ahead(anItem({ lots: [aLot(20)] }), stop(6))).toMatchObject({
      belowLeastOn: null,
      shortOn: null,
      shortBy: 0,
      orderBy: null,
      isLate: false,
      orderAmount: 0,
    })
  })

  it('counts what is on order on its day, and today what should be here', () => {
    const onOrder = [
      { orderId: 'late', amount: 8, expectedOn: '2026-04-20' },
      { orderId: 'later', amount: 16, expectedOn: '2026-07-01' },
    ]
    expect(told(anItem({ onOrder }), stop(6))).toEqual([
      ['2026-05-04', 0, '0 m on hand'],
      ['2026-05-04', 8, '8 m of an order'],
      ['2026-06-09', 2, '6 m for Summer stop'],
      ['2026-07-01', 18, '16 m of an order'],
    ])
  })

  it('loses what nobody wanted by its last day, and does not have what has expired', () => {
    const item = anItem({ lots: [aLot(3, '2026-05-01'), aLot(5, '2026-06-01'), aLot(10)] })
    expect(told(item, stop(6))).toEqual([
      ['2026-05-04', 15, '15 m on hand'],
      ['2026-06-01', 10, '5 m past their last day'],
      ['2026-06-09', 4, '6 m for Summer stop'],
    ])
    expect(ahead(item, stop(6)).expires).toEqual([{ on: '2026-06-01', amount: 5 }])
  })

  it('owes what was used and never put down', () => {
    expect(told(anItem({ lots: [aLot(5), aLot(-1.5)] }))).toEqual([
      ['2026-05-04', 5, '5 m on hand'],
      ['2026-05-04', 3.5, '1.5 m: more was used than was put down'],
    ])
  })

  it('is counted in pieces where it is no cord', () => {
    expect(told(anItem({ unit: 'pc', lots: [aLot(12)], packSize: 10 }), stop(6))).toEqual([
      ['2026-05-04', 12, '12 pieces on hand'],
      ['2026-06-09', 6, '6 pieces for Summer stop'],
    ])
  })
})
