import { type KilogramPerHour, kilogramsPerHour } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hoursPerYear, money } from './leak-quantity.ts'
import type { LossRange } from './loss.ts'
import { kilogramsCarbonDioxidePerKilogram, sumOfLosses } from './loss-sum.ts'

const loss = (low: number, middle: number, high: number): LossRange => ({
  low: kilogramsPerHour(low),
  middle: kilogramsPerHour(middle),
  high: kilogramsPerHour(high),
})
const allYear = { hours: hoursPerYear(8760), pricePerKilogram: null, carbonPerKilogram: null }

function sum(losses: readonly LossRange[], year: Parameters<typeof sumOfLosses>[1] = allYear) {
  const found = sumOfLosses(losses, year)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('losses together', () => {
  it('10 (7 to 13) and 20 (16 to 24): 30, down by √(9 + 16) and up by as much', () => {
    expect(sum([loss(7, 10, 13), loss(16, 20, 24)]).kgPerHour).toEqual({ low: 25, middle: 30, high: 35 })
  })

  it('each side by its own half widths: 10 (7 to 22) and 20 (16 to 25) give 25 to 43', () => {
    expect(sum([loss(7, 10, 22), loss(16, 20, 25)]).kgPerHour).toEqual({ low: 25, middle: 30, high: 43 })
  })

  it('8,000 hours at 0.5 a kg and 2 kg CO2e a kg', () => {
    const year = {
      hours: hoursPerYear(8000),
      pricePerKilogram: money(0.5),
      carbonPerKilogram: kilogramsCarbonDioxidePerKilogram(2),
    }
    expect(sum([loss(1, 2, 3)], year)).toMatchObject({
      kgPerYear: { low: 8000, middle: 16_000, high: 24_000 },
      money: { low: 4000, middle: 8000, high: 12_000 },
      carbon: { low: 16_000, middle: 32_000, high: 48_000 },
    })
  })

  it('what is not set is not said, and none are nought', () => {
    expect(sum([loss(1, 2, 3)])).toMatchObject({ money: null, carbon: null })
    expect(sum([]).kgPerHour).toEqual({ low: 0, middle: 0, high: 0 })
  })

  it('one loss is itself', () => expect(sum([loss(0.1, 0.3, 0.7)]).kgPerHour).toEqual({ low: 0.1, middle: 0.3, high: 0.7 }))

  it('never below nought, nor wider than the plain sum, whatever the losses', () => {
    const some = fc
      .tuple(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
      )
      .map(([middle, down, up]) => loss(middle * down, middle, middle * up))
    fc.assert(
      fc.property(fc.array(some, { maxLength: 30 }), (losses) => {
        const { low, middle, high } = sum(losses).kgPerHour
        const plain = (side: 'low' | 'high') => losses.reduce((total, each) => total + each[side], 0)
        expect(low).toBeGreaterThanOrEqual(Math.min(plain('low'), middle))
        expect(high).toBeLessThanOrEqual(Math.max(plain('high'), middle))
        expect(low >= 0 && low <= middle && middle <= high).toBe(true)
      }),
    )
  })
})

it.each<[string, readonly LossRange[], Partial<typeof allYear>, string, string]>([
  ['a low above the middle', [loss(3, 2, 4)], {}, 'loss/not-a-range', 'losses'],
  ['a high below it', [loss(1, 2, 1.5)], {}, 'loss/not-a-range', 'losses'],
  ['a loss below nought', [loss(-1, 2, 3)], {}, 'loss/not-a-range', 'losses'],
  ['no number', [{ ...loss(1, 2, 3), middle: Number.NaN as KilogramPerHour }], {}, 'loss/not-a-range', 'losses'],
  ['more than can be computed with', [loss(0, 0, 1e305)], {}, 'number/out-of-range', 'losses'],
  ['a year of 9,000 hours', [], { hours: hoursPerYear(9000) }, 'loss/hours', 'hours'],
  ['a year of none', [], { hours: hoursPerYear(0) }, 'number/not-positive', 'hours'],
])('refuses %s', (_, losses, year, code, field) => {
  expect(sumOfLosses(losses, { ...allYear, ...year })).toMatchObject({ ok: false, problem: { code, field } })
})

it('refuses a price below nought', () => {
  expect(sumOfLosses([], { ...allYear, pricePerKilogram: money(-1) })).toMatchObject({
    ok: false,
    problem: { code: 'number/negative', field: 'pricePerKilogram' },
  })
})
