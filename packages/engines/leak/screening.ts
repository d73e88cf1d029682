import { type KilogramPerHour, kilogramsPerHour, type Ppmv } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import type { Source } from '../source.ts'

export type ScreenedService = 'SOCMI gas valve' | 'SOCMI light liquid valve' | 'petroleum industry valve'

/** What the meter showed: above background, or stopped at the end of its range. */
export type Screening = { readonly screeningValue: Ppmv } | { readonly peggedAt: 10_000 | 100_000 }

interface Factor {
  readonly rate: number
  readonly mark: Source['mark']
}

/**
 * kg/h of total organic compound for one valve, by service.
 *
 * @source SRC-511 correlations · SRC-512 default zero · SRC-513 default zero of light liquid · SRC-514 pegged (docs/sources.md)
 */
const factors: Readonly<
  Record<
    ScreenedService,
    {
      readonly multiplier: number
      readonly exponent: number
      readonly zero: Factor
      readonly pegged: Readonly<Record<10_000 | 100_000, Factor>>
    }
  >
> = {
  'SOCMI gas valve': {
    multiplier: 1.87e-6,
    exponent: 0.873,
    zero: { rate: 6.6e-7, mark: 'read' },
    pegged: { 10_000: { rate: 0.024, mark: 'from memory' }, 100_000: { rate: 0.11, mark: 'from memory' } },
  },
  'SOCMI light liquid valve': {
    multiplier: 6.41e-6,
    exponent: 0.797,
    zero: { rate: 4.9e-7, mark: 'from memory' },
    pegged: { 10_000: { rate: 0.036, mark: 'from memory' }, 100_000: { rate: 0.15, mark: 'from memory' } },
  },
  'petroleum industry valve': {
    multiplier: 2.29e-6,
    exponent: 0.746,
    zero: { rate: 7.8e-6, mark: 'read' },
    pegged: { 10_000: { rate: 0.064, mark: 'from memory' }, 100_000: { rate: 0.14, mark: 'from memory' } },
  },
}

/**
 * Leak of one valve from its screening value, in the published order of use.
 *
 *     at background        default zero
 *     between              multiplier * (ppmv above background) ^ exponent        kg/h
 *     meter at its end     pegged factor
 *
 * The result is total organic compound, not one compound. An average of many valves: one valve may leak ten times more or less.
 * Just above background the correlation gives less than default zero; that is how it was published.
 *
 * @source SRC-511 SRC-512 SRC-513 SRC-514 factors · SRC-515 order of use (docs/sources.md)
 * @returns kg/h, by which rule and with what mark; or `leak/not-a-screening-value`
 * @example rateOfScreening({ service: 'SOCMI gas valve', screening: { peggedAt: 10_000 } }).mark // → 'from memory'
 */
export function rateOfScreening(input: { readonly service: ScreenedService; readonly screening: Screening }): Outcome<{
  readonly rate: KilogramPerHour
  readonly by: 'default zero' | 'correlation' | 'pegged factor'
  readonly mark: Source['mark']
}> {
  const { multiplier, exponent, zero, pegged } = factors[input.service]
  if ('peggedAt' in input.screening) {
    const factor = pegged[input.screening.peggedAt]
    return { ok: true, rate: kilogramsPerHour(factor.rate), by: 'pegged factor', mark: factor.mark }
  }
  const { screeningValue } = input.screening
  // A million parts in a million is pure gas.
  if (!(screeningValue >= 0 && screeningValue <= 1e6)) {
    return refuse(
      'leak/not-a-screening-value',
      'screeningValue',
      `a screening value is 0 to 1,000,000 ppmv above background, not ${screeningValue}`,
    )
  }
  if (screeningValue === 0) return { ok: true, rate: kilogramsPerHour(zero.rate), by: 'default zero', mark: zero.mark }
  return { ok: true, rate: kilogramsPerHour(multiplier * screeningValue ** exponent), by: 'correlation', mark: 'read' }
}
