import { forecastReserve, type ReserveForecast } from '@glandkeeper/engines/wear/forecast'
import { priorOfGroup, type PriorFit } from '@glandkeeper/engines/wear/fit'
import type { LifeRecord } from '@glandkeeper/engines/wear/life'
import { leastSquares } from '@glandkeeper/engines/wear/straight-line'
import { addDays, days, daysBetween, ratio } from '@glandkeeper/units/quantity'
import { begin, type TrueLife } from './plant.ts'

export const READING_COUNTS = [1, 2, 3, 5, 8, 12]
const LATEST = 20 * 365.25
const YEAR = 365.25

/** How forecasts from so many readings came out. */
export interface Score {
  readonly readings: number
  readonly cases: number
  readonly within80: number
  readonly within95: number
  /** Median of |date said - true date|, days, neither later than twenty years. */
  readonly error: number
  readonly straightLineError: number
}

export interface Scores {
  readonly byReadings: readonly Score[]
  /** Over all cases with five readings or more. */
  readonly error: number
  readonly straightLineError: number
  /** Mean distance between the chance said of running out in a year and the share that did, over ten bands of chance. */
  readonly yearChanceOff: number
}

interface Case {
  readonly readings: number
  readonly within80: boolean
  readonly within95: boolean
  readonly error: number
  readonly straightLineError: number
  readonly yearChance: number
  readonly ranOutInYear: boolean
}

export function scoresOf(lives: readonly TrueLife[], fit: Pick<PriorFit, 'groups' | 'plant'>): Scores {
  const cases = READING_COUNTS.flatMap((readings) => lives.flatMap((life) => caseOf(life, fit, readings) ?? []))
  const byReadings = READING_COUNTS.map((readings): Score => {
    const own = cases.filter((one) => one.readings === readings)
    return {
      readings,
      cases: own.length,
      within80: share(own, (one) => one.within80),
      within95: share(own, (one) => one.within95),
      error: median(own.map((one) => one.error)),
      straightLineError: median(own.map((one) => one.straightLineError)),
    }
  })
  const many = cases.filter((one) => one.readings >= 5)
  return {
    byReadings,
    error: median(many.map((one) => one.error)),
    straightLineError: median(many.map((one) => one.straightLineError)),
    yearChanceOff: yearChanceOff(cases),
  }
}

function caseOf(life: TrueLife, fit: Pick<PriorFit, 'groups' | 'plant'>, readings: number): Case | null {
  if (life.record.readings.length < readings) return null
  const record = { ...life.record, readings: life.record.readings.slice(0, readings) }
  const last = record.readings.at(-1)!
  const forecast = forecastReserve({
    life: record,
    prior: priorOfGroup(fit, life.group),
    earlierLives: [],
    chances: [0.025, 0.1, 0.5, 0.9, 0.975].map(ratio),
    before: [addDays(last.at, days(YEAR))],
  })
  if (!forecast.ok) throw new Error(forecast.problem.detail)
  const truth = life.runsOutAfter - daysBetween(begin, last.at)
  const [q025, q10, q50, q90, q975] = daysOf(forecast, daysBetween(forecast.countedFrom, last.at))
  const due = Math.min(truth, LATEST)
  return {
    readings,
    within80: due >= q10! && due <= q90!,
    within95: due >= q025! && due <= q975!,
    error: Math.abs(due - q50!),
    straightLineError: Math.abs(due - straightLineDays(record)),
    yearChance: forecast.chances[0]!.chance,
    ranOutInYear: truth <= YEAR,
  }
}

/** A left-out last reading moves the count back: all days here are from the last reading of the record. */
function daysOf({ dates }: ReserveForecast, moved: number): number[] {
  return dates.map(({ runsOut }) => {
    if (runsOut.state === 'used up') return 0
    return runsOut.state === 'on a date' ? Math.max(0, runsOut.days - moved) : LATEST
  })
}

function straightLineDays({ readings }: LifeRecord): number {
  const last = readings.at(-1)!
  const line = leastSquares(readings.map(({ at, reserve }) => ({ x: daysBetween(last.at, at), y: reserve })))!
  return line.slope < 0 ? Math.max(0, Math.min(LATEST, -line.intercept / line.slope)) : LATEST
}

function yearChanceOff(cases: readonly Case[]): number {
  const bands = Array.from({ length: 10 }, (_, band) =>
    cases.filter((one) => Math.min(9, Math.floor(one.yearChance * 10)) === band),
  )
  const off = bands.map((band) => {
    const said = band.reduce((sum, one) => sum + one.yearChance, 0)
    const came = band.filter((one) => one.ranOutInYear).length
    return Math.abs(said - came)
  })
  return off.reduce((sum, each) => sum + each, 0) / cases.length
}

function share<Thing>(things: readonly Thing[], holds: (thing: Thing) => boolean): number {
  return things.filter(holds).length / things.length
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other)
  return sorted.length === 0 ? NaN : (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
}
