import { listStock, type StockItem, showStockOutlook, type StockOutlook } from '@glandkeeper/contract/stores'
import { expect, test } from 'vitest'
import { byUrgency, expiryInWords, mindInWords, orderInWords, shortageInWords } from './order-words.ts'

const plain = (words: string | null) => words?.replaceAll('\u00a0', ' ') ?? null
const TODAY = '2026-03-07'

const outlookOf = (change: object = {}): StockOutlook => {
  const outlook = {
    itemId: '01890000-0000-7000-8000-0000000000ff',
    demand: 20,
    balances: [],
    belowLeastOn: null,
    shortOn: null,
    shortBy: 0,
    orderBy: null,
    isLate: false,
    orderAmount: 0,
    expires: [],
    ...change,
  }
  const [parsed] = showStockOutlook.ok.parse({ items: [outlook], unknown: [], open: [], until: '2027-03-07' }).items
  if (!parsed) throw new Error('an outlook was given')
  return parsed
}

test('an order says how much by when, that it is today, and how late it is', () => {
  const order = (change: object) => plain(orderInWords(outlookOf({ orderAmount: 16, ...change }), 'm', TODAY))
  expect(order({ orderBy: '2026-03-04', isLate: true })).toBe('Order 16 m by 4 Mar 2026: late by 3 days')
  expect(order({ orderBy: '2026-03-06', isLate: true })).toBe('Order 16 m by 6 Mar 2026: late by 1 day')
  expect(order({ orderBy: '2026-03-07' })).toBe('Order 16 m by 7 Mar 2026: today')
  expect(order({ orderBy: '2026-05-04' })).toBe('Order 16 m by 4 May 2026')
  expect(order({ orderBy: null })).toBeNull()
  expect(order({ orderBy: '2026-05-04', orderAmount: 0 })).toBeNull()
})

test('a shortage goes before a stock that is only below its least', () => {
  const short = { shortOn: '2026-06-08', shortBy: 3.25, belowLeastOn: '2026-05-01' }
  expect(plain(shortageInWords(outlookOf(short), 'm'))).toBe('Short by 3.25 m on 8 Jun 2026')
  expect(shortageInWords(outlookOf({ belowLeastOn: '2026-05-01' }), 'm')).toBe('Below the least stock from 1 May 2026')
  expect(shortageInWords(outlookOf(), 'm')).toBeNull()
  expect(plain(expiryInWords('2026-05-01', 3.2, 'm'))).toBe('3.2 m expires unused on 1 May 2026.')
})

const itemOf = (change: object = {}): StockItem => {
  const lot = { lotId: '01890000-0000-7000-8000-0000000000aa', label: 'R-1', batch: 'B-1', expiresOn: '2026-01-01' }
  const item = {
    itemId: '01890000-0000-7000-8000-0000000000ff',
    kind: 'cord',
    name: 'Graphite 8',
    family: 'graphite braid',
    section: 8,
    boxBore: null,
    stemDiameter: null,
    thread: null,
    length: null,
    leadTimeDays: 21,
    leastStock: 8,
    packSize: 8,
    unit: 'm',
    revision: 1,
    onHand: 5,
    lots: [
      { ...lot, amount: 2.5, isExpired: true },
      { ...lot, amount: 5, isExpired: false },
    ],
    onOrder: [],
    ...change,
  }
  const [parsed] = listStock.ok.parse({ items: [item] }).items
  if (!parsed) throw new Error('an item was given')
  return parsed
}

test('books below nought are to be counted, and what expired is not on hand', () => {
  expect(mindInWords(itemOf({ onHand: -0.4, lots: [] }))).toEqual(['More was used than anybody put down: count it.'])
  expect(mindInWords(itemOf()).map(plain)).toEqual(['2.5 m expired: not counted.'])
  expect(mindInWords(itemOf({ lots: [] }))).toEqual([])
})

test('what is to be ordered first stands on top, what needs no order below it by name', () => {
  const row = (name: string, orderBy: string | null) => ({
    item: itemOf({ name }),
    outlook: orderBy === 'unread' ? null : outlookOf({ orderBy }),
  })
  const rows = [row('b', null), row('c', '2026-05-01'), row('d', '2026-03-01'), row('a', 'unread')]
  expect(byUrgency(rows).map(({ item }) => item.name)).toEqual(['d', 'c', 'a', 'b'])
})
