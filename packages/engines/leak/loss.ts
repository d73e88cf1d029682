import {
  type Bar,
  type BarAbsolute,
  type Celsius,
  type KilogramPerHour,
  kilogramsPerHour,
  type Millilitre,
  type Ppmv,
  ppmv,
  type Ratio,
} from '@glandkeeper/units/quantity'
import { type InputProblem, type Outcome, refuse } from '../outcome.ts'
import type { Source } from '../source.ts'
import { airThroughOpening } from './air-orifice.ts'
import { litresOfDrops } from './drops.ts'
import { type KilogramPerCubicMetre, kilogramsPerCubicMetre } from './leak-quantity.ts'
import type { Opening } from './opening.ts'
import { rateOfScreening, type ScreenedService, type Screening } from './screening.ts'
import { type SteamMethod, steamThroughOpening } from './steam-orifice.ts'
import { waterThroughOpening } from './water-orifice.ts'

/** A leak as it was measured, with how far the measurement may be off: 0.2 is a fifth to either side. */
export type LeakMeasured =
  | {
      readonly by: 'screening'
      readonly service: ScreenedService
      readonly screening: Screening
      readonly meterError: Ratio
    }
  | {
      readonly by: 'drops'
      readonly dropsPerMinute: number
      /** Taken as it is: which volume is right nobody knows, and the figure says which it took. */
      readonly dropVolume: Millilitre
      readonly density?: KilogramPerCubicMetre
      readonly countError: Ratio
    }
  | (ThroughOpening & {
      readonly by: 'steam'
      readonly steamMethod: SteamMethod
      readonly pressure: BarAbsolute
      readonly downstreamPressure?: BarAbsolute
    })
  | (ThroughOpening & {
      readonly by: 'water'
      readonly pressureDrop: Bar
      readonly coefficient?: Ratio
      readonly density?: KilogramPerCubicMetre
    })
  | (ThroughOpening & {
      readonly by: 'air'
      readonly pressure: BarAbsolute
      readonly coefficient: Ratio
      readonly temperature?: Celsius
      readonly downstreamPressure?: BarAbsolute
    })

interface ThroughOpening {
  readonly opening: Opening
  /** Of the width of the opening, also where it is given by its area. */
  readonly diameterError: Ratio
}

export interface LossRange {
  readonly middle: KilogramPerHour
  readonly low: KilogramPerHour
  readonly high: KilogramPerHour
}

export interface LeakLoss {
  readonly kgPerHour: LossRange
  readonly method:
    | 'screening correlation'
    | 'default zero'
    | 'pegged factor'
    | 'drops counted'
    | 'steam through an opening'
    | 'water through an opening'
    | 'air through an opening'
  /** What the figure rests on: service, volume of a drop, or formula. */
  readonly basis: string
  readonly mark: Source['mark']
  readonly inValidRange: boolean
  /** Null in the valid range. */
  readonly whyNotValid: string | null
  /** The error that made low and high; null where the method has none to take. */
  readonly error: { readonly of: 'screening value' | 'drops counted' | 'width of the opening'; readonly relative: Ratio } | null
}

const [LEAST_SCREENED, MOST_SCREENED, PURE_GAS] = [1, 100_000, 1e6]
/** Water at 20 °C. */
const WATER = kilogramsPerCubicMetre(998.2)

/**
 * What a leak loses, by whatever was measured of it, with what the error of measuring makes of it.
 *
 *     screening    correlation at value (1 ± error); default zero and pegged factors have no range of their own
 *     drops        litres of the drops * density;    (1 ± error)
 *     an opening   steam, water or air;              (1 ± error of its width)²
 *
 * Low and high hold the error of measuring only: one valve may leak ten times more or less than a correlation says.
 *
 * @source SRC-764 errors · SRC-765 range of correlations · SRC-511 to SRC-515, SRC-503, SRC-504 to SRC-510 methods (docs/sources.md)
 * @returns kg/h, how it was found and with what mark; or `loss/not-an-error`, or the problem of the method
 * @example lossOfLeak({ by: 'screening', service: 'SOCMI gas valve', screening: { screeningValue: ppmv(1) }, meterError: ratio(0) }).kgPerHour.middle // → 1.87e-6
 */
export function lossOfLeak(measured: LeakMeasured): Outcome<LeakLoss> {
  switch (measured.by) {
    case 'screening':
      return refusedError('meterError', measured.meterError) ?? lossByScreening(measured)
    case 'drops':
      return refusedError('countError', measured.countError) ?? lossByDrops(measured)
    case 'steam':
    case 'water':
    case 'air':
      return refusedError('diameterError', measured.diameterError) ?? lossThroughOpening(measured)
  }
}

type Measured<By extends LeakMeasured['by']> = Extract<LeakMeasured, { by: By }>

function lossByScreening({ service, screening, meterError }: Measured<'screening'>): Outcome<LeakLoss> {
  const found = rateOfScreening({ service, screening })
  if (!found.ok) return found
  const { rate, by, mark } = found
  const known = { ok: true as const, basis: service, mark, ...validityOf(screening) }
  if ('peggedAt' in screening || by !== 'correlation') {
    const method = by === 'correlation' ? 'screening correlation' : by
    return { ...known, kgPerHour: { middle: rate, low: rate, high: rate }, method, error: null }
  }
  const low = screening.screeningValue * Math.max(0, 1 - meterError)
  const above = rateOfScreening({ service, screening: { screeningValue: shownAtMost(screening.screeningValue, meterError) } })
  // At background the published factor is above the correlation: the low end of a leak would lie above its middle.
  const below = low === 0 ? null : rateOfScreening({ service, screening: { screeningValue: ppmv(low) } })
  if (!above.ok) return above
  if (below !== null && !below.ok) return below
  const kgPerHour = { middle: rate, low: below?.rate ?? kilogramsPerHour(0), high: above.rate }
  return { ...known, kgPerHour, method: 'screening correlation', error: { of: 'screening value', relative: meterError } }
}

function shownAtMost(value: Ppmv, meterError: Ratio): Ppmv {
  return ppmv(Math.min(PURE_GAS, value * (1 + meterError)))
}

function validityOf(screening: Screening): Pick<LeakLoss, 'inValidRange' | 'whyNotValid'> {
  if ('peggedAt' in screening) {
    const end = screening.peggedAt === 10_000 ? '10,000' : '100,000'
    return { inValidRange: false, whyNotValid: `the meter stopped at ${end} ppmv: how much more it was nobody knows` }
  }
  const { screeningValue } = screening
  if (screeningValue > MOST_SCREENED)
    return { inValidRange: false, whyNotValid: 'the correlation is taken to hold up to 100,000 ppmv' }
  if (screeningValue > 0 && screeningValue < LEAST_SCREENED)
    return { inValidRange: false, whyNotValid: 'the correlation is taken to hold from 1 ppmv above background' }
  return { inValidRange: true, whyNotValid: null }
}

function lossByDrops({ dropsPerMinute, dropVolume, density = WATER, countError }: Measured<'drops'>): Outcome<LeakLoss> {
  const found = litresOfDrops({ dropsPerMinute, dropVolume })
  if (!found.ok) return found
  if (!(density > 0 && density < Infinity))
    return refuse('number/not-positive', 'density', `density must be more than 0, not ${density}`)
  const range = rangeAbout((found.perDay / 24) * (density / 1000), countError, 1)
  const volume = found.drop === 'as set' ? `drops of ${dropVolume} mL, as set` : `drops of a ${found.drop}`
  const known = { basis: volume, mark: 'worked out', inValidRange: true, whyNotValid: null } as const
  return withRange(range, { ...known, method: 'drops counted', error: { of: 'drops counted', relative: countError } })
}

function lossThroughOpening(measured: Measured<'steam' | 'water' | 'air'>): Outcome<LeakLoss> {
  const found = flowThrough(measured)
  if (!found.ok) return found
  const { flow, basis, mark } = found
  const error = { of: 'width of the opening', relative: measured.diameterError } as const
  const method = `${measured.by} through an opening` as const
  const range = rangeAbout(flow, measured.diameterError, 2)
  return withRange(range, { method, basis, mark, inValidRange: true, whyNotValid: null, error })
}

function flowThrough(
  measured: Measured<'steam' | 'water' | 'air'>,
): Outcome<Pick<LeakLoss, 'basis' | 'mark'> & { readonly flow: KilogramPerHour }> {
  switch (measured.by) {
    case 'steam': {
      const found = steamThroughOpening({ ...measured, method: measured.steamMethod })
      return found.ok ? { ok: true, flow: found.flow, basis: found.method, mark: steamMarks[found.method] } : found
    }
    case 'water': {
      const found = waterThroughOpening(measured)
      return found.ok ? { ok: true, flow: found.mass, basis: 'orifice formula', mark: 'worked out' } : found
    }
    case 'air': {
      const found = airThroughOpening(measured)
      return found.ok ? { ok: true, flow: found.mass, basis: 'choked flow', mark: 'worked out' } : found
    }
  }
}

/** 0.73 is a share of Napier, which is from memory. */
const steamMarks: Readonly<Record<SteamMethod, Source['mark']>> = {
  Napier: 'from memory',
  '24.24 form': 'read',
  'discharge 0.73': 'from memory',
}

function rangeAbout(middle: number, error: Ratio, power: 1 | 2): Readonly<Record<keyof LossRange, number>> {
  return { middle, low: middle * Math.max(0, 1 - error) ** power, high: middle * (1 + error) ** power }
}

function withRange(range: Readonly<Record<keyof LossRange, number>>, loss: Omit<LeakLoss, 'kgPerHour'>): Outcome<LeakLoss> {
  const { middle, low, high } = range
  if (!Number.isFinite(high)) return refuse('number/out-of-range', 'leak', 'the figures are too large to compute with')
  const kgPerHour = { middle: kilogramsPerHour(middle), low: kilogramsPerHour(low), high: kilogramsPerHour(high) }
  return { ok: true, kgPerHour, ...loss }
}

function refusedError(field: string, error: Ratio): { ok: false; problem: InputProblem } | null {
  if (error >= 0 && error < Infinity) return null
  return refuse('loss/not-an-error', field, `an error is a share, 0 or more, as 0.2 is for a fifth, not ${error}`)
}
