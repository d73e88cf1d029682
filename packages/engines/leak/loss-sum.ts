import { constructorOf, type KilogramPerHour, kilogramsPerHour, type Quantity } from '@glandkeeper/units/quantity'
import { firstNotPositive, type InputProblem, type Outcome, refuse } from '../outcome.ts'
import {
  type HourPerYear,
  type KilogramCarbonDioxidePerYear,
  kilogramsCarbonDioxidePerYear,
  type Money,
  money,
} from './leak-quantity.ts'
import type { LossRange } from './loss.ts'

export type KilogramPerYear = Quantity<'kg/y'>
export type KilogramCarbonDioxidePerKilogram = Quantity<'kg CO2e/kg'>
export const kilogramsPerYear = constructorOf('kg/y')
export const kilogramsCarbonDioxidePerKilogram = constructorOf('kg CO2e/kg')

export interface Range<Value> {
  readonly middle: Value
  readonly low: Value
  readonly high: Value
}

export interface SumOfLosses {
  readonly kgPerHour: Range<KilogramPerHour>
  readonly kgPerYear: Range<KilogramPerYear>
  /** Null where no price is set. */
  readonly money: Range<Money> | null
  /** Null where no factor is set. */
  readonly carbon: Range<KilogramCarbonDioxidePerYear> | null
}

interface YearOfLosses {
  readonly hours: HourPerYear
  readonly pricePerKilogram: Money | null
  /** Of the plant: what a kilogram that leaks warms, or what it took to make. */
  readonly carbonPerKilogram: KilogramCarbonDioxidePerKilogram | null
}

/** Of a leap year; more hours than that no year has. */
const MOST_HOURS = 8784

/**
 * What leaks lose together, in an hour and a year, in money and carbon.
 *
 *     middle = Σ middle;  high = middle + √ Σ (high - middle)²;  low = middle - √ Σ (middle - low)²
 *
 * Holds where errors have nothing to do with each other. One meter that reads too high, or one volume of a drop for all, is off
 * for all alike: the range is then too narrow, and the plain sums of low and high are the safe ones. Leaks are taken to go on all year.
 *
 * @source SRC-766 independent errors · SRC-520 SRC-521 price and factor (docs/sources.md)
 * @returns nought for no losses; or `loss/not-a-range`, `loss/hours`, `number/…`
 * @example sumOfLosses([], { hours: 8760, pricePerKilogram: null, carbonPerKilogram: null }).kgPerHour.high // → 0
 */
export function sumOfLosses(losses: readonly LossRange[], year: YearOfLosses): Outcome<SumOfLosses> {
  const refused = refusedYear(year) ?? refusedLosses(losses)
  if (refused) return refused
  const perHour = together(losses)
  const perYear = times(perHour, year.hours)
  const cost = year.pricePerKilogram === null ? null : times(perYear, year.pricePerKilogram)
  const warming = year.carbonPerKilogram === null ? null : times(perYear, year.carbonPerKilogram)
  if (![perHour, perYear, cost, warming].every((range) => range === null || Number.isFinite(range.high)))
    return refuse('number/out-of-range', 'losses', 'the losses are too large to compute with')
  return {
    ok: true,
    kgPerHour: each(perHour, kilogramsPerHour),
    kgPerYear: each(perYear, kilogramsPerYear),
    money: cost && each(cost, money),
    carbon: warming && each(warming, kilogramsCarbonDioxidePerYear),
  }
}

function together(losses: readonly LossRange[]): Range<number> {
  let [middle, below, above, lows, highs] = [0, 0, 0, 0, 0]
  for (const loss of losses) {
    middle += loss.middle
    below += (loss.middle - loss.low) ** 2
    above += (loss.high - loss.middle) ** 2
    lows += loss.low
    highs += loss.high
  }
  // The last digits of a root may pass the plain sum, or nought.
  const low = Math.max(Math.min(lows, middle), middle - Math.sqrt(below))
  return { middle, low, high: Math.min(Math.max(highs, middle), middle + Math.sqrt(above)) }
}

function times({ middle, low, high }: Range<number>, factor: number): Range<number> {
  return { middle: middle * factor, low: low * factor, high: high * factor }
}

function each<Value>({ middle, low, high }: Range<number>, made: (value: number) => Value): Range<Value> {
  return { middle: made(middle), low: made(low), high: made(high) }
}

function refusedYear({ hours, ...factors }: YearOfLosses): { ok: false; problem: InputProblem } | null {
  const refused = firstNotPositive({ hours })
  if (refused) return refused
  if (hours > MOST_HOURS) return refuse('loss/hours', 'hours', `a year has at most ${MOST_HOURS} hours, not ${hours}`)
  for (const [field, value] of Object.entries(factors)) {
    if (value !== null && !(value >= 0 && value < Infinity))
      return refuse('number/negative', field, `must be a number of 0 or more, not ${value}`)
  }
  return null
}

function refusedLosses(losses: readonly LossRange[]): { ok: false; problem: InputProblem } | null {
  const wrong = losses.find(({ middle, low, high }) => !(low >= 0 && low <= middle && middle <= high && high < Infinity))
  if (!wrong) return null
  const { middle, low, high } = wrong
  return refuse('loss/not-a-range', 'losses', `a loss is 0 or more and between low and high, not ${low}, ${middle}, ${high}`)
}
