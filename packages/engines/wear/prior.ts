import { type Day, days, type Millimetre, mm, mm2, type Quantity, type SquareMillimetre } from '@glandkeeper/units/quantity'

/** How fast chance wear grows: the variance it adds for each day of wear. */
export type SquareMillimetrePerDay = Quantity<'mm²/d'>

/** How reserve falls and how it is read, the same for all valves of a plant. */
export interface WearParameters {
  /** Of one reading about the level: the rule, the eye, and where between two nips it was taken. */
  readonly readingVariance: SquareMillimetre
  readonly processVariance: SquareMillimetrePerDay
  /** Bed-in takes as much reserve as so many days of steady wear … */
  readonly bedInDays: Day
  /** … and this much more whatever the rate … */
  readonly bedInFall: Millimetre
  readonly bedInFallVariance: SquareMillimetre
  /** … and after this time 63 % of it is over. */
  readonly bedInTime: Day
}

/** What is known of the wear rate of a valve before its own readings: ln of mm a day, normally distributed. */
export interface RatePrior {
  readonly logRate: number
  /** Between the lives of one group. */
  readonly logRateVariance: number
  /** How far the group's mean itself is in doubt. */
  readonly logRateMeanVariance: number
}

/** What the forecast of a life starts from. Plain numbers throughout: it may be stored as JSON and read again. */
export interface GroupPrior {
  readonly rate: RatePrior
  readonly wear: WearParameters
  /** Share of the variance between lives that stays with the valve from one packing to the next; at most 0.6. */
  readonly valveShare: number
  readonly origin: 'set by us' | 'fitted to the plant' | 'fitted to the group'
  /** Lives of the group that told its rate. */
  readonly lives: number
}

const DAYS_IN_YEAR = 365.25

/**
 * What a plant starts from before it has any history: 3 mm a year, and one life in six below 1.3 or above 7 mm a year.
 * Replaced by the fit of the plant's own lives; the settings of wear are also what that fit leans towards.
 *
 * @source SRC-701 starting values of wear, bed-in and reading error (docs/sources.md)
 */
export const defaultPrior: GroupPrior = {
  rate: { logRate: Math.log(3 / DAYS_IN_YEAR), logRateVariance: 0.5, logRateMeanVariance: 0.25 },
  wear: {
    readingVariance: mm2(0.2),
    processVariance: (0.5 / DAYS_IN_YEAR) as SquareMillimetrePerDay,
    bedInDays: days(120),
    bedInFall: mm(1),
    bedInFallVariance: mm2(0.2),
    bedInTime: days(50),
  },
  valveShare: 0.3,
  origin: 'set by us',
  lives: 0,
}

/**
 * The first number of a prior that no forecast can start from, by its name; null when all can.
 *
 * @example unusableIn({ ...defaultPrior, valveShare: 2 }) // → 'valveShare'
 */
export function unusableIn({ rate, wear, valveShare }: GroupPrior): string | null {
  const isWithin = (value: number, low: number, high: number) => value >= low && value <= high
  if (!isWithin(rate.logRate, -50, 50)) return 'logRate'
  if (!isWithin(rate.logRateVariance, 1e-9, 100)) return 'logRateVariance'
  if (!isWithin(rate.logRateMeanVariance, 0, 100)) return 'logRateMeanVariance'
  if (!isWithin(wear.readingVariance, 1e-9, 1e9)) return 'readingVariance'
  if (!isWithin(wear.processVariance, 0, 1e9)) return 'processVariance'
  if (!isWithin(wear.bedInDays, 0, 1e5)) return 'bedInDays'
  if (!isWithin(wear.bedInFall, 0, 1e6)) return 'bedInFall'
  if (!isWithin(wear.bedInFallVariance, 0, 1e9)) return 'bedInFallVariance'
  if (!isWithin(wear.bedInTime, 1e-3, 1e5)) return 'bedInTime'
  return isWithin(valveShare, 0, 0.6) ? null : 'valveShare'
}

/**
 * Share of bed-in that is over at an age: 0 right after the repack, 0.63 after one bed-in time, 1 in the end.
 *
 *     1 - exp(-age / bed-in time)      age in days
 *
 * @source SRC-700 the wear model (docs/sources.md)
 * @example bedInShare(defaultPrior.wear, 0) // → 0
 */
export function bedInShare(wear: WearParameters, age: number): number {
  return 1 - Math.exp(-age / wear.bedInTime)
}
