import { addDays, days, type Instant, instant, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reserveFan } from './fan.ts'
import { forecastReserve } from './forecast.ts'
import { defaultPrior } from './prior.ts'

const at = (day: number): Instant => instant(day * 86_400_000)
const life = {
  readings: [14, 12.6, 11.9, 11].map((reserve, nth) => ({ at: at(20 + 90 * nth), reserve: mm(reserve) })),
  nips: [],
  repackedAt: at(0),
  step: mm(0.875),
}
const known = { life, prior: defaultPrior, earlierLives: [] }

function linesOf(ahead: readonly number[], chances: readonly number[]) {
  const fan = reserveFan({ ...known, ahead: ahead.map(days), chances: chances.map(ratio) })
  if (!fan.ok) throw new Error(fan.problem.detail)
  return fan.lines
}

describe('the fan of the reserve', () => {
  it('meets nought where the forecast says so: on the date with chance p, a share p of the fan is below nought', () => {
    const chances = [0.1, 0.5, 0.9].map(ratio)
    const forecast = forecastReserve({ ...known, chances, before: [] })
    if (!forecast.ok) throw new Error(forecast.problem.detail)
    for (const { chance, runsOut } of forecast.dates) {
      if (runsOut.state !== 'on a date') throw new Error(runsOut.state)
      const [line] = linesOf([runsOut.days], [chance])
      expect(line?.reserves[0]).toBeCloseTo(0, 2)
      expect(line?.at).toBe(addDays(forecast.countedFrom, runsOut.days))
    }
  })

  it('begins about the last reading and falls, its lines in order and drawing apart', () => {
    const [now, later] = linesOf([0, 700], [0.1, 0.5, 0.9])
    expect(Math.abs(now!.reserves[1]! - 11)).toBeLessThan(0.5)
    expect(now!.reserves).toEqual(now!.reserves.toSorted((one, other) => one - other))
    expect(later!.reserves[1]).toBeLessThan(now!.reserves[1]! - 2)
    expect(later!.reserves[2]! - later!.reserves[0]!).toBeGreaterThan(now!.reserves[2]! - now!.reserves[0]!)
  })

  it.each([
    ['no reading', { life: { ...life, readings: [] } }, 'forecast/no-reading'],
    ['a day before', { ahead: [days(-1)] }, 'fan/not-ahead'],
    ['a chance of 1', { chances: [ratio(1)] }, 'forecast/impossible-chance'],
    ['a prior out of range', { prior: { ...defaultPrior, valveShare: -1 } }, 'forecast/unusable-prior'],
  ])('%s is refused by name', (_, more, code) =>
    expect(reserveFan({ ...known, ahead: [days(10)], chances: [ratio(0.5)], ...more })).toMatchObject({
      ok: false,
      problem: { code },
    }),
  )

  it('is finite or a named problem for any numbers', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (day, chance, reserve) => {
        const readings = [...life.readings, { at: at(400), reserve: reserve as ReturnType<typeof mm> }]
        const input = { ...known, life: { ...life, readings }, ahead: [day], chances: [chance] }
        const fan = reserveFan(input as unknown as Parameters<typeof reserveFan>[0])
        if (fan.ok) expect(fan.lines.every(({ reserves }) => reserves.every(Number.isFinite))).toBe(true)
        else expect(fan.problem.code).toMatch(/\//)
      }),
      { numRuns: 500 },
    )
  })
})
