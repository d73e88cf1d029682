import { describe, expect, it } from 'vitest'
import type { StockInput } from './stock-input.ts'
import { stockProjection } from './stock-projection.ts'
import { type StockAmount, stockAmount } from './stock-quantity.ts'

const lot = (amount: number, expiresOn: string | null = null) => ({ amount: stockAmount(amount), expiresOn })
const arrival = (on: string, amount: number) => ({ on, amount: stockAmount(amount) })
const want = (on: string, amount: number, wantedBy = 'V-101') => ({ on, amount: stockAmount(amount), for: wantedBy })
const anInput = (more: Partial<StockInput> = {}): StockInput => ({
  today: '2026-03-01',
  lots: [lot(10)],
  arrivals: [],
  demand: [],
  leadTimeDays: 14,
  leastStock: stockAmount(0),
  packSize: null,
  horizon: '2026-12-31',
  ...more,
})
const project = (more: Partial<StockInput> = {}) => {
  const found = stockProjection(anInput(more))
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const steps = (more: Partial<StockInput>) =>
  project(more).changes.map(({ on, what, amount, balance }) => [on.slice(5), what, amount, balance])

describe('stock over time', () => {
  it('starts with what there is, and goes on with what arrives and is wanted, in order of days', () => {
    expect(steps({ arrivals: [arrival('2026-05-01', 20)], demand: [want('2026-06-01', 12), want('2026-04-01', 4)] })).toEqual([
      ['03-01', 'start', 10, 10],
      ['04-01', 'demand', 4, 6],
      ['05-01', 'arrival', 20, 26],
      ['06-01', 'demand', 12, 14],
    ])
  })

  it('counts what arrives on a day before what is wanted on it, and what expires after both', () => {
    const day = '2026-04-01'
    const more = { lots: [lot(10, day)], arrivals: [arrival(day, 5)], demand: [want(day, 4)] }
    expect(steps(more).slice(1)).toEqual([
      ['04-01', 'arrival', 5, 15],
      ['04-01', 'demand', 4, 11],
      ['04-01', 'expiry', 6, 5],
    ])
    expect(project(more).expired).toEqual([{ on: day, amount: 6 }])
  })

  it('draws what expires first, whatever order lots are given in: 6 of 8 are used before they expire', () => {
    const lots = [lot(10), lot(8, '2026-05-01'), lot(3, '2026-08-01')]
    const { expired, changes } = project({ lots, demand: [want('2026-04-01', 6), want('2026-07-01', 2)] })
    expect(expired).toEqual([
      { on: '2026-05-01', amount: 2 },
      { on: '2026-08-01', amount: 1 },
    ])
    expect(changes.at(-1)?.balance).toBe(21 - 8 - 3)
  })

  it('loses what has expired before today at once, before anything is drawn', () => {
    expect(steps({ lots: [lot(10, '2026-02-28'), lot(4)], demand: [want('2026-03-01', 6)] })).toEqual([
      ['03-01', 'start', 14, 14],
      ['03-01', 'expiry', 10, 4],
      ['03-01', 'demand', 6, -2],
    ])
  })

  it('takes what was due before today for today, and leaves out what lies beyond the horizon', () => {
    const more = {
      arrivals: [arrival('2026-02-01', 5), arrival('2027-01-01', 50)],
      demand: [want('2026-01-15', 3), want('2027-01-01', 99)],
      lots: [lot(10), lot(7, '2027-01-01')],
    }
    expect(steps(more)).toEqual([
      ['03-01', 'start', 17, 17],
      ['03-01', 'arrival', 5, 22],
      ['03-01', 'demand', 3, 19],
    ])
  })

  it('keeps owing what was not there, and pays it from what arrives: 10 - 14 + 6 = 2', () => {
    const { changes, short, notMet } = project({
      demand: [want('2026-03-05', 14)],
      arrivals: [arrival('2026-03-09', 6)],
    })
    expect(changes.map(({ balance }) => balance)).toEqual([10, -4, 2])
    expect(short).toEqual({ on: '2026-03-05', by: 4 })
    expect(notMet).toEqual([{ on: '2026-03-05', amount: 4, for: 'V-101' }])
  })
})

describe('what to order', () => {
  const demand = [want('2026-05-10', 6, 'V-1'), want('2026-06-20', 9, 'V-2'), want('2026-08-01', 5, 'V-3')]

  it('is nothing while the least stock holds', () => {
    expect(project({ demand: [want('2026-05-10', 8)], leastStock: stockAmount(2) })).toMatchObject({
      short: null,
      belowLeast: null,
      order: null,
      notMet: [],
    })
  })

  it('by the first day below the least stock less the lead time, as much as is wanted to the horizon and the least stock', () => {
    // 10 - 6 = 4 on 10 May; 4 - 9 = -5 on 20 June; -10 on 1 August: 3 + 10 = 13 lacking, two packs of 8.
    const found = project({ demand, leastStock: stockAmount(3), packSize: stockAmount(8) })
    expect(found.belowLeast).toEqual({ on: '2026-06-20', by: 8 })
    expect(found.short).toEqual({ on: '2026-06-20', by: 5 })
    expect(found.order).toEqual({ by: '2026-06-06', isLate: false, arrivesOn: '2026-06-20', amount: 16 })
  })

  it('in single pieces is as many as are lacking', () => expect(project({ demand }).order?.amount).toBe(10))

  it('in packs that fit exactly is not one pack more: 0.1 + 0.2 lacking, packs of 0.1', () => {
    const more = { lots: [], demand: [want('2026-05-01', 0.1), want('2026-05-02', 0.2)], packSize: stockAmount(0.1) }
    expect(project(more).order?.amount).toBeCloseTo(0.3, 12)
  })

  it('may be due today, without being late: ordered on the last day', () => {
    expect(project({ demand: [want('2026-03-15', 11)] }).order).toEqual({
      by: '2026-03-01',
      isLate: false,
      arrivesOn: '2026-03-15',
      amount: 1,
    })
  })

  it('late says what cannot be met even when ordered today', () => {
    const found = project({ demand: [want('2026-03-14', 11, 'V-1'), want('2026-03-15', 4, 'V-2')] })
    expect(found.order).toEqual({ by: '2026-02-28', isLate: true, arrivesOn: '2026-03-15', amount: 5 })
    // One piece lacks on the 14th; the four of the 15th come in time.
    expect(found.notMet).toEqual([{ on: '2026-03-14', amount: 1, for: 'V-1' }])
  })

  it('below the least stock from the start is late by the whole lead time', () => {
    expect(project({ leastStock: stockAmount(12) })).toMatchObject({
      belowLeast: { on: '2026-03-01', by: 2 },
      short: null,
      order: { by: '2026-02-15', isLate: true, arrivesOn: '2026-03-15', amount: 2 },
    })
  })

  it('is nothing more where what is expected anyway comes before any order could', () => {
    const found = project({ demand: [want('2026-03-05', 12)], arrivals: [arrival('2026-03-10', 20)] })
    expect(found.order).toMatchObject({ isLate: true, amount: 0 })
    expect(found.notMet).toEqual([{ on: '2026-03-05', amount: 2, for: 'V-101' }])
  })

  it('looks at the end of a day: what arrives today makes up for too little this morning', () => {
    expect(project({ leastStock: stockAmount(12), arrivals: [arrival('2026-03-01', 5)] }).order).toBeNull()
  })
})

const notANumber = Number.NaN as StockAmount

it.each([
  ['today that is no day', { today: 'today' }, 'day/not-a-day', 'today'],
  ['a horizon that is no day', { horizon: '2026-02-30' }, 'day/not-a-day', 'horizon'],
  ['a horizon before today', { horizon: '2026-02-28' }, 'stock/horizon-before-today', 'horizon'],
  ['a lot that expires on no day', { lots: [lot(1, '2026-13-01')] }, 'day/not-a-day', 'lots'],
  ['an arrival on no day', { arrivals: [arrival('', 1)] }, 'day/not-a-day', 'arrivals'],
  ['demand on no day', { demand: [want('soon', 1)] }, 'day/not-a-day', 'demand'],
  ['a lot of less than nothing', { lots: [lot(-1)] }, 'stock/not-an-amount', 'lots'],
  ['an arrival of no number', { arrivals: [{ on: '2026-04-01', amount: notANumber }] }, 'stock/not-an-amount', 'arrivals'],
  ['demand of no number', { demand: [{ on: '2026-04-01', amount: notANumber, for: '' }] }, 'stock/not-an-amount', 'demand'],
  ['a least stock below nothing', { leastStock: stockAmount(-1) }, 'stock/not-an-amount', 'leastStock'],
  ['a pack of nothing', { packSize: stockAmount(0) }, 'stock/not-a-pack', 'packSize'],
  ['half a day of lead time', { leadTimeDays: 0.5 }, 'stock/lead-time', 'leadTimeDays'],
  ['a lead time that is no number', { leadTimeDays: Number.NaN }, 'stock/lead-time', 'leadTimeDays'],
])('%s is refused', (_, more, code, field) => {
  expect(stockProjection(anInput(more))).toMatchObject({ ok: false, problem: { code, field } })
})
