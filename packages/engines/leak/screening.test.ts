import { type Ppmv, ppmv, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rateOfScreening, type ScreenedService, type Screening } from './screening.ts'

const services: readonly ScreenedService[] = ['SOCMI gas valve', 'SOCMI light liquid valve', 'petroleum industry valve']
const of = (service: ScreenedService, screening: Screening) => {
  const found = rateOfScreening({ service, screening })
  if (!found.ok) throw new Error(found.problem.code)
  return found
}

describe('a screening value', () => {
  it('between: 2.29e-6 * 100^0.746 = 7.1094e-5 kg/h by correlation', () => {
    const found = of('petroleum industry valve', { screeningValue: ppmv(100) })
    expect(found.rate).toBeCloseTo(7.1094e-5, 9)
    expect(found).toMatchObject({ by: 'correlation', mark: 'read' })
  })

  it('at background takes default zero, at the end of the meter the pegged factor, each with its mark', () => {
    const zero = { screeningValue: ppmv(0) }
    expect(of('petroleum industry valve', zero)).toEqual({ ok: true, rate: 7.8e-6, by: 'default zero', mark: 'read' })
    expect(of('SOCMI light liquid valve', zero)).toMatchObject({ by: 'default zero', mark: 'from memory' })
    for (const service of services) {
      const low = of(service, { peggedAt: 10_000 })
      const high = of(service, { peggedAt: 100_000 })
      expect([low.by, low.mark, high.by, high.mark]).toEqual(['pegged factor', 'from memory', 'pegged factor', 'from memory'])
      expect(low.rate).toBeLessThan(high.rate)
      expect(low.rate).toBeGreaterThan(of(service, { screeningValue: ppmv(9999) }).rate)
    }
  })

  it.each([-1, -1e-9, 1_000_001, Number.NaN, Infinity])('refuses %d ppmv', (value) => {
    expect(rateOfScreening({ service: 'SOCMI gas valve', screening: { screeningValue: value as Ppmv } })).toMatchObject({
      ok: false,
      problem: { code: 'leak/not-a-screening-value', field: 'screeningValue' },
    })
  })

  it('a higher value is a larger leak, within the correlation', () => {
    const value = fc.double({ min: 1e-3, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(fc.constantFrom(...services), value, value, (service, one, other) => {
        const [less, more] = one < other ? [one, other] : [other, one]
        expect(of(service, { screeningValue: ppmv(less) }).rate).toBeLessThanOrEqual(
          of(service, { screeningValue: ppmv(more) }).rate,
        )
      }),
    )
  })

  it('takes ppmv, not a bare number or a ratio', () => {
    // @ts-expect-error a bare number has no unit
    rateOfScreening({ service: 'SOCMI gas valve', screening: { screeningValue: 100 } })
    // @ts-expect-error a ratio is a millionth of it
    rateOfScreening({ service: 'SOCMI gas valve', screening: { screeningValue: ratio(1e-4) } })
  })
})
