import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calendarDay, writtenDay } from './calendar-day.ts'
import { dayOf, type StockInput } from './stock-input.ts'
import { stockProjection } from './stock-projection.ts'
import { stockAmount } from './stock-quantity.ts'

const TODAY = dayOf('2026-03-01')
const arrival = (on: string, amount: number) => ({ on, amount: stockAmount(amount) })
const anyDay = fc.integer({ min: -20, max: 200 }).map((day) => writtenDay(calendarDay(TODAY + day)))
const anyAmount = fc.integer({ min: 0, max: 30 })
const anyInput = fc
  .record({
    lots: fc.array(fc.tuple(anyAmount, fc.option(anyDay)), { maxLength: 5 }),
    arrivals: fc.array(fc.tuple(anyDay, anyAmount), { maxLength: 4 }),
    demand: fc.array(fc.tuple(anyDay, anyAmount), { maxLength: 8 }),
    leadTimeDays: fc.integer({ min: 0, max: 60 }),
    leastStock: anyAmount.map(stockAmount),
    packSize: fc.constantFrom(null, stockAmount(1), stockAmount(8)),
    horizon: fc.integer({ min: 0, max: 150 }).map((day) => writtenDay(calendarDay(TODAY + day))),
  })
  .map(({ lots, arrivals, demand, ...more }): StockInput => ({
    ...more,
    today: writtenDay(TODAY),
    lots: lots.map(([amount, expiresOn]) => ({ amount: stockAmount(amount), expiresOn })),
    arrivals: arrivals.map(([on, amount]) => arrival(on, amount)),
    demand: demand.map(([on, amount], at) => ({ on, amount: stockAmount(amount), for: `V-${at}` })),
  }))

const project = (input: StockInput) => {
  const found = stockProjection(input)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('any stock', () => {
  it('is start and arrivals less demand and what expired, after each change', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { changes, expired } = project(input)
        let balance = 0
        for (const { what, amount, balance: said } of changes) {
          balance += (what === 'start' || what === 'arrival' ? 1 : -1) * amount
          expect(said).toBeCloseTo(balance, 9)
        }
        const within = (on: string) => on <= input.horizon
        const sum = (of: readonly { readonly amount: number }[]) => of.reduce((all, { amount }) => all + amount, 0)
        const [arrived, wanted] = [input.arrivals, input.demand].map((all) => sum(all.filter(({ on }) => within(on))))
        expect(balance).toBeCloseTo(sum(input.lots) + arrived! - wanted! - sum(expired), 9)
        // Whoever waits for cord leaves none to expire.
        for (const [at, change] of changes.entries())
          if (change.what === 'expiry') expect(changes[at]!.balance).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('holds its least stock to the horizon once what is said is ordered in time; an order of a pack less does not', () => {
    let tried = 0
    fc.assert(
      fc.property(anyInput, (input) => {
        const { order } = project(input)
        if (!order || order.isLate) return
        tried += 1
        const after = (amount: number) => project({ ...input, arrivals: [...input.arrivals, arrival(order.arrivesOn, amount)] })
        expect(after(order.amount)).toMatchObject({ belowLeast: null, short: null, notMet: [], order: null })
        expect(after(order.amount - (input.packSize ?? 1)).belowLeast).not.toBeNull()
      }),
      { numRuns: 300, seed: 1 },
    )
    expect(tried).toBeGreaterThan(50)
  })

  it('late, lacks nothing from the day on which the order comes', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { order } = project(input)
        if (!order?.isLate) return
        const arrivals = [...input.arrivals, arrival(order.arrivesOn, order.amount)]
        const { changes, belowLeast } = project({ ...input, arrivals })
        if (belowLeast) expect(belowLeast.on < order.arrivesOn).toBe(true)
        const last = changes.at(-1)!
        if (last.on >= order.arrivesOn) expect(last.balance).toBeGreaterThanOrEqual(input.leastStock)
      }),
    )
  })

  it('asks for an order no later, and can meet no more, the longer the lead time', () => {
    fc.assert(
      fc.property(anyInput, fc.integer({ min: 0, max: 60 }), (input, longer) => {
        const [soon, late] = [project(input), project({ ...input, leadTimeDays: input.leadTimeDays + longer })]
        const lacking = ({ notMet }: typeof soon) => notMet.reduce((sum, { amount }) => sum + amount, 0)
        expect(lacking(late)).toBeGreaterThanOrEqual(lacking(soon))
        expect(late.changes).toEqual(soon.changes)
        expect(late.order === null).toBe(soon.order === null)
        if (soon.order && late.order) {
          const daysEarlier: number = dayOf(soon.order.by) - dayOf(late.order.by)
          expect(daysEarlier).toBe(longer)
        }
      }),
    )
  })
})
