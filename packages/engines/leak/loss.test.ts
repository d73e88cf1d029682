import { bar, barAbsolute, millilitres, mm, mm2, ppmv, type Ratio, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { airThroughOpening } from './air-orifice.ts'
import { kilogramsPerCubicMetre } from './leak-quantity.ts'
import { type LeakMeasured, lossOfLeak } from './loss.ts'
import { rateOfScreening, type ScreenedService } from './screening.ts'
import { steamThroughOpening } from './steam-orifice.ts'
import { waterThroughOpening } from './water-orifice.ts'

function loss(measured: LeakMeasured) {
  const found = lossOfLeak(measured)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const screened = (value: number, meterError = 0, service: ScreenedService = 'petroleum industry valve') =>
  loss({ by: 'screening', service, screening: { screeningValue: ppmv(value) }, meterError: ratio(meterError) })

describe('by a screening value', () => {
  it('100 ppmv within a tenth: between the correlation at 90 and at 110', () => {
    const { kgPerHour, method, error } = screened(100, 0.1)
    expect(kgPerHour.middle).toBeCloseTo(2.29e-6 * 100 ** 0.746, 15)
    expect(kgPerHour.low).toBeCloseTo(2.29e-6 * 90 ** 0.746, 15)
    expect(kgPerHour.high).toBeCloseTo(2.29e-6 * 110 ** 0.746, 15)
    expect([method, error]).toEqual(['screening correlation', { of: 'screening value', relative: 0.1 }])
  })

  it('an error as large as the value goes down to nought, never to the larger default zero', () => {
    expect(screened(2, 1).kgPerHour.low).toBe(0)
    expect(screened(2, 5).kgPerHour.low).toBe(0)
    expect(rateOfScreening({ service: 'petroleum industry valve', screening: { screeningValue: ppmv(0) } })).toMatchObject({
      rate: 7.8e-6,
    })
    expect(screened(2, 1).kgPerHour.middle).toBeLessThan(7.8e-6)
  })

  it('at background is default zero, with its own mark and no range of its own', () => {
    expect(screened(0, 0.1, 'SOCMI light liquid valve')).toMatchObject({
      method: 'default zero',
      mark: 'from memory',
      inValidRange: true,
      error: null,
      kgPerHour: { middle: 4.9e-7, low: 4.9e-7, high: 4.9e-7 },
    })
    expect(screened(0).mark).toBe('read')
  })

  it.each([10_000, 100_000] as const)('a meter that stopped at %i ppmv is out of range, from memory, and says so', (peggedAt) => {
    const found = loss({ by: 'screening', service: 'SOCMI gas valve', screening: { peggedAt }, meterError: ratio(0.1) })
    expect(found).toMatchObject({ method: 'pegged factor', mark: 'from memory', inValidRange: false, error: null })
    expect(found.whyNotValid).toContain(peggedAt.toLocaleString('en'))
  })

  it.each([
    [0.99, false],
    [1, true],
    [100_000, true],
    [100_001, false],
  ])('%d ppmv is in range: %s', (value, inValidRange) => {
    const found = screened(value)
    expect(found.inValidRange).toBe(inValidRange)
    expect(found.whyNotValid === null).toBe(inValidRange)
  })

  it('above pure gas no meter can have been wrong', () =>
    expect(screened(900_000, 0.5).kgPerHour.high).toBe(screened(1e6).kgPerHour.high))
})

describe('by drops', () => {
  const measured = { by: 'drops', dropsPerMinute: 60, dropVolume: millilitres(0.25), countError: ratio(0.2) } as const

  it('60 a minute of 0.25 mL: 0.9 L/h of water, 0.89838 kg/h within a fifth', () => {
    const { kgPerHour, method, basis, mark, error } = loss(measured)
    expect(kgPerHour.middle).toBeCloseTo(0.89838, 12)
    expect(kgPerHour.low).toBeCloseTo(0.718704, 12)
    expect(kgPerHour.high).toBeCloseTo(1.078056, 12)
    expect([method, basis, mark]).toEqual(['drops counted', 'drops of a quarter of a millilitre', 'worked out'])
    expect(error).toEqual({ of: 'drops counted', relative: 0.2 })
  })

  it('of another volume and density say so: 0.1 mL of 800 kg/m³ gives 0.288 kg/h', () => {
    const found = loss({ ...measured, dropVolume: millilitres(0.1), density: kilogramsPerCubicMetre(800) })
    expect(found.kgPerHour.middle).toBeCloseTo(0.288, 12)
    expect(found.basis).toBe('drops of 0.1 mL, as set')
  })

  it.each([0, -1])('of a density of %d are refused', (density) => {
    expect(lossOfLeak({ ...measured, density: kilogramsPerCubicMetre(density) })).toMatchObject({
      ok: false,
      problem: { code: 'number/not-positive', field: 'density' },
    })
  })
})

describe('through an opening', () => {
  const opening = { diameter: mm(2) }
  const wider = { diameter: mm(2.2) }
  const narrower = { diameter: mm(1.8) }
  const diameterError = ratio(0.1)

  it.each([
    ['Napier', 'from memory'],
    ['24.24 form', 'read'],
    ['discharge 0.73', 'from memory'],
  ] as const)('steam by %s is as the engine gives it for the wider and the narrower one, marked %s', (method, mark) => {
    const pressure = barAbsolute(8)
    const found = loss({ by: 'steam', steamMethod: method, opening, pressure, diameterError })
    const of = (hole: typeof opening) => {
      const steam = steamThroughOpening({ method, opening: hole, pressure })
      return steam.ok ? steam.flow : Number.NaN
    }
    expect(found.kgPerHour.low).toBeCloseTo(of(narrower), 10)
    expect(found.kgPerHour.middle).toBe(of(opening))
    expect(found.kgPerHour.high).toBeCloseTo(of(wider), 10)
    expect(found).toMatchObject({ method: 'steam through an opening', basis: method, mark, inValidRange: true })
  })

  it('water and air likewise', () => {
    const water = (hole: typeof opening) => {
      const found = waterThroughOpening({ opening: hole, pressureDrop: bar(5) })
      return found.ok ? found.mass : Number.NaN
    }
    const air = (hole: typeof opening) => {
      const found = airThroughOpening({ opening: hole, pressure: barAbsolute(8), coefficient: ratio(0.65) })
      return found.ok ? found.mass : Number.NaN
    }
    const wet = loss({ by: 'water', opening, pressureDrop: bar(5), diameterError })
    const dry = loss({ by: 'air', opening, pressure: barAbsolute(8), coefficient: ratio(0.65), diameterError })
    expect([wet.method, dry.method]).toEqual(['water through an opening', 'air through an opening'])
    expect([wet.kgPerHour.middle, dry.kgPerHour.middle]).toEqual([water(opening), air(opening)])
    expect(wet.kgPerHour.low).toBeCloseTo(water(narrower), 10)
    expect(dry.kgPerHour.high).toBeCloseTo(air(wider), 10)
  })

  it('given by its area takes the error of its width all the same: 1.1² and 0.9²', () => {
    const { kgPerHour } = loss({ by: 'water', opening: { area: mm2(3) }, pressureDrop: bar(5), diameterError })
    expect(kgPerHour.high / kgPerHour.middle).toBeCloseTo(1.21, 12)
    expect(kgPerHour.low / kgPerHour.middle).toBeCloseTo(0.81, 12)
  })

  it('that is not critical is refused by the engine', () => {
    const slow = lossOfLeak({ by: 'steam', steamMethod: 'Napier', opening, pressure: barAbsolute(1.2), diameterError })
    expect(slow).toMatchObject({ ok: false, problem: { code: 'leak/not-critical' } })
  })
})

it.each([-0.1, Number.NaN, Infinity])('refuses an error of %d', (error) => {
  const drops = { by: 'drops', dropsPerMinute: 1, dropVolume: millilitres(0.25), countError: error as Ratio } as const
  expect(lossOfLeak(drops)).toMatchObject({ ok: false, problem: { code: 'loss/not-an-error', field: 'countError' } })
  const meter = {
    by: 'screening',
    service: 'SOCMI gas valve',
    screening: { screeningValue: ppmv(9) },
    meterError: error as Ratio,
  } as const
  expect(lossOfLeak(meter)).toMatchObject({ ok: false, problem: { field: 'meterError' } })
  const hole = { by: 'water', opening: { diameter: mm(1) }, pressureDrop: bar(1), diameterError: error as Ratio } as const
  expect(lossOfLeak(hole)).toMatchObject({ ok: false, problem: { field: 'diameterError' } })
})

it('never NaN, and low is at most middle, middle at most high', () => {
  const error = fc.double({ min: 0, max: 1e200, noNaN: true })
  const any = fc.double({ min: 0, max: 1e200, noNaN: true })
  const value = fc.double({ min: 0, max: 1e6, noNaN: true })
  const measured: fc.Arbitrary<LeakMeasured> = fc.oneof(
    fc.record({ e: error, value }).map(({ e, value: shown }) => ({
      by: 'screening' as const,
      service: 'SOCMI gas valve' as const,
      screening: { screeningValue: ppmv(shown) },
      meterError: ratio(e),
    })),
    fc.record({ e: error, any }).map(({ e, any: drops }) => ({
      by: 'drops' as const,
      dropsPerMinute: drops,
      dropVolume: millilitres(0.25),
      countError: ratio(e),
    })),
    fc.record({ e: error, any }).map(({ e, any: width }) => ({
      by: 'water' as const,
      opening: { diameter: mm(width) },
      pressureDrop: bar(3),
      diameterError: ratio(e),
    })),
  )
  fc.assert(
    fc.property(measured, (leak) => {
      const found = lossOfLeak(leak)
      if (!found.ok) return
      const { low, middle, high } = found.kgPerHour
      expect(low >= 0 && low <= middle && middle <= high && high < Infinity).toBe(true)
    }),
  )
})
