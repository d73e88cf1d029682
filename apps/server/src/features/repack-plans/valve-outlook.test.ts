import { instant } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { FORECAST_CHANCES, type KeptForecast } from '../glands/index.ts'
import { type OutlookState, valveOutlook } from './valve-outlook.ts'

const DAY = 86_400_000
const now = new Date('2026-05-04T09:00:00Z')
const inDays = (days: number) => instant(now.getTime() + days * DAY)
/** Used up some day between 100 and 220 days from now, most likely about 160. */
const forecast = {
  countedFrom: now.getTime(),
  dates: FORECAST_CHANCES.map((chance) => now.getTime() + (100 + 120 * chance) * DAY),
} as unknown as KeptForecast
const look = { weighed: [{ rule: 'leak interval', at: now.getTime() + 50 * DAY }] }
const state: OutlookState = {
  reserveMm: 4,
  forecast: JSON.stringify(forecast),
  nextLook: JSON.stringify(look),
  lastSeenAt: now,
  packedAt: new Date(now.getTime() - 160 * DAY),
}

describe('what may become of a gland', () => {
  it('has the chance of its kept forecast, the leak interval turned around, and its share of life', () => {
    const { chanceBefore, leaksPerDay, lifeUsedAt } = valveOutlook(state, now, 0.1)
    expect(chanceBefore(inDays(160))).toBeCloseTo(0.5, 6)
    expect(chanceBefore(inDays(30))).toBeLessThan(0.001)
    // A leak begins within 50 days with a chance of a tenth.
    expect(1 - Math.exp(-leaksPerDay * 50)).toBeCloseTo(0.1, 9)
    expect(lifeUsedAt(inDays(0))).toBeCloseTo(0.5, 9)
    expect(lifeUsedAt(inDays(160))).toBeCloseTo(1, 9)
  })

  it('with no travel left is out for certain, and nothing of it is thrown away', () => {
    const { chanceBefore, lifeUsedAt } = valveOutlook({ ...state, reserveMm: 0 }, now, 0.1)
    expect([chanceBefore(inDays(0)), lifeUsedAt(inDays(0))]).toEqual([1, 1])
  })

  it('of which nobody knows anything says nothing', () => {
    const unknown = { reserveMm: null, forecast: null, nextLook: null, lastSeenAt: null, packedAt: null }
    const { chanceBefore, leaksPerDay } = valveOutlook(unknown, now, 0.1)
    expect([chanceBefore(inDays(900)), leaksPerDay]).toEqual([0, 0])
  })
})
