import { days, type Instant, instant, mm, type Ratio, ratio, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { forecastReserve, type ForecastInput } from './forecast.ts'
import type { LifeRecord } from './life.ts'
import { defaultPrior } from './prior.ts'

const at = (day: number): Instant => instant(day * 86_400_000)
const lifeOf = (readings: readonly (readonly [day: number, reserve: number])[]): LifeRecord => ({
  readings: readings.map(([day, reserve]) => ({ at: at(day), reserve: mm(reserve) })),
  nips: [],
  repackedAt: at(0),
  step: mm(0.875),
})
const usual = [0.025, 0.1, 0.5, 0.9, 0.975].map(ratio)

function forecastOf(life: LifeRecord, more: Partial<ForecastInput> = {}) {
  return forecastReserve({ life, prior: defaultPrior, earlierLives: [], chances: usual, before: [at(1000)], ...more })
}

describe('the forecast, given anything', () => {
  it.each([
    ['a chance of 0', { chances: [ratio(0)] }, 'forecast/impossible-chance', 'chances'],
    ['a chance of 1', { chances: [ratio(1)] }, 'forecast/impossible-chance', 'chances'],
    ['a chance that is no number', { chances: [NaN as Ratio] }, 'forecast/impossible-chance', 'chances'],
    ['a moment that is no date', { before: [NaN as Instant] }, 'number/out-of-range', 'before'],
    [
      'a prior without variance',
      { prior: { ...defaultPrior, rate: { ...defaultPrior.rate, logRateVariance: 0 } } },
      'forecast/unusable-prior',
      'prior',
    ],
    ['no step', { life: { ...lifeOf([[0, 5]]), step: mm(0) } }, 'number/not-positive', 'step'],
  ])('%s is refused by name', (_, more, code, field) =>
    expect(forecastOf(lifeOf([[0, 5]]), more)).toMatchObject({ ok: false, problem: { code, field } }),
  )

  it('is finite or a named problem for any numbers at all', () => {
    const any = fc.double()
    const reading = fc.record({ at: any, reserve: any })
    const life = fc.record({
      readings: fc.array(reading, { maxLength: 6 }),
      nips: fc.array(fc.record({ at: any, travel: any }), { maxLength: 3 }),
      repackedAt: fc.option(any),
      step: any,
    })
    const sane = fc.record({
      readings: fc.array(fc.record({ at: fc.double({ min: -3e14, max: 3e14 }), reserve: fc.double({ min: -1e6, max: 1e6 }) }), {
        maxLength: 6,
      }),
      nips: fc.array(fc.record({ at: fc.double({ min: -3e14, max: 3e14 }), travel: fc.double({ min: -1e6, max: 1e6 }) }), {
        maxLength: 3,
      }),
      repackedAt: fc.option(fc.double({ min: -3e14, max: 3e14 })),
      step: fc.double({ min: 1e-9, max: 1e6 }),
    })
    fc.assert(
      fc.property(
        fc.oneof(life, sane),
        fc.array(any, { maxLength: 2 }),
        fc.array(any, { maxLength: 2 }),
        (record, chances, before) => {
          const input = { life: record, prior: defaultPrior, earlierLives: [record], chances, before } as unknown as ForecastInput
          const forecast = forecastReserve(input)
          if (!forecast.ok) {
            expect(forecast.problem.code).toMatch(/^[a-z]+\/[a-z-]+$/)
            return
          }
          const numbers = JSON.stringify(forecast).match(/null/g) ?? []
          expect(numbers.length).toBe(forecast.leftOut.filter(({ off }) => off === null).length)
          for (const { chance } of forecast.chances) expect(chance >= 0 && chance <= 1).toBe(true)
        },
      ),
      { numRuns: 2000 },
    )
  })

  it('does not compile with bare numbers or turns for millimetres', () => {
    const life = lifeOf([[0, 5]])
    // @ts-expect-error a bare number is no reserve
    expect(forecastOf({ ...life, readings: [{ at: at(0), reserve: 5 }] }).ok).toBe(true)
    // @ts-expect-error turns are no travel
    expect(forecastOf({ ...life, nips: [{ at: at(0), travel: turns(0.5) }] }).ok).toBe(true)
    // @ts-expect-error days are no moment
    expect(forecastOf(life, { before: [days(100)] }).ok).toBe(true)
  })
})
