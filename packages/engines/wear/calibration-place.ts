import { daysBetween, type Instant } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'

/** One forecast made in the past, and what became of the packing life it spoke of. */
export interface ForecastWithOutcome {
  /** The same for all forecasts of one packing life. */
  readonly life: string
  readonly group: string
  readonly readingsUsed: number
  readonly countedFrom: Instant
  /** One for each chance asked about, in order; null is beyond 20 years. */
  readonly dates: readonly (Instant | null)[]
  /** What a straight line through the same readings said; null where none could be drawn. */
  readonly straightLineAt: Instant | null
  readonly outcome: LifeOutcome
}

/** The reserve was used up at a moment, or had not been when the life was last seen. */
export interface LifeOutcome {
  readonly ranOut: boolean
  readonly at: Instant
}

/** A forecast set against its outcome. */
export interface JudgedForecast {
  readonly life: string
  readonly group: string
  readonly span: ReadingSpan
  /** Chance the forecast gave for running out by the outcome, or by when the life was last seen. */
  readonly place: number
  readonly ranOut: boolean
  /** Days from the middle of the forecast, and from the straight line, to the outcome; null where one of them is not known. */
  readonly middleMiss: number | null
  readonly straightLineMiss: number | null
}

export const readingSpans = ['1', '2', '3', '4 to 5', '6 to 9', '10 or more'] as const
export type ReadingSpan = (typeof readingSpans)[number]

const SPAN_BEGINS = [1, 2, 3, 4, 6, 10] as const
const MILLISECONDS_IN_20_YEARS = 20 * 365.25 * 86_400_000

/**
 * How many readings a forecast rested on, in spans that hold enough lives to judge.
 *
 * @example spanOfReadings(5) // → '4 to 5'
 */
export function spanOfReadings(readings: number): ReadingSpan {
  return readingSpans[
    Math.max(
      SPAN_BEGINS.findLastIndex((begins) => readings >= begins),
      0,
    )
  ]!
}

/**
 * What became of a life: used up at the first level that shows no travel left, otherwise watched until the last level.
 *
 * @param levels in order of time
 * @returns null where no level is known
 * @example outcomeOfLife([{ at: instant(0), reserve: mm(2) }, { at: instant(5), reserve: mm(0) }]) // → { ranOut: true, at: 5 }
 */
export function outcomeOfLife(levels: readonly { readonly at: Instant; readonly reserve: number }[]): LifeOutcome | null {
  const spent = levels.find(({ reserve }) => reserve <= 0)
  if (spent) return { ranOut: true, at: spent.at }
  const last = levels.at(-1)
  return last ? { ranOut: false, at: last.at } : null
}

/**
 * Chance that a forecast gave for running out by a moment, read between its dates.
 *
 *     between two dates     linear in time
 *     before the first      linear from 0 at the moment the forecast counts from
 *     after the last        half way from the last chance to 1: no chance is asked about there
 *     beyond 20 years       the date not known is put at 20 years
 *
 * One rising curve for outcomes and for lives still watched, so that watching that ended early does not lean to either side.
 *
 * @source SRC-711 place of an outcome in its forecast (docs/sources.md)
 * @returns from 0 to 1, or what about the dates cannot be used
 * @example placeInForecast({ chances: [0.5], dates: [instant(10)], countedFrom: instant(0), at: instant(5) }) // → { ok: true, place: 0.25 }
 */
export function placeInForecast(input: {
  readonly chances: readonly number[]
  readonly dates: readonly (Instant | null)[]
  readonly countedFrom: Instant
  readonly at: Instant
}): Outcome<{ readonly place: number }> {
  const fault = faultOf(input)
  if (fault) return fault
  const { chances, dates, countedFrom, at } = input
  if (at <= countedFrom) return { ok: true, place: 0 }
  const passed = dates.findLastIndex((date) => date !== null && date <= at)
  const [fromAt, fromChance] = passed === -1 ? [countedFrom, 0] : [dates[passed]!, chances[passed]!]
  const toChance = chances[passed + 1]
  if (toChance === undefined) return { ok: true, place: (1 + fromChance) / 2 }
  const toAt = dates[passed + 1] ?? Math.max(countedFrom + MILLISECONDS_IN_20_YEARS, fromAt + 1)
  const share = Math.min((at - fromAt) / (toAt - fromAt), 1)
  return { ok: true, place: fromChance + share * (toChance - fromChance) }
}

function faultOf({ chances, dates, countedFrom, at }: Parameters<typeof placeInForecast>[0]) {
  if (chances.length === 0 || chances.length !== dates.length)
    return refuse('calibration/dates-do-not-fit', 'dates', `${dates.length} dates for ${chances.length} chances`)
  if (!chances.every((chance, index) => chance > (chances[index - 1] ?? 0) && chance < 1))
    return refuse('forecast/impossible-chance', 'chances', 'chances must rise, above 0 and below 1')
  if (!(Math.abs(countedFrom) < Infinity)) return refuse('number/out-of-range', 'countedFrom', 'the forecast counts from no date')
  if (!(Math.abs(at) < Infinity)) return refuse('number/out-of-range', 'at', 'the outcome has no date')
  let before: number = countedFrom
  for (const date of dates) {
    if (!((date ?? Infinity) >= before)) return refuse('calibration/dates-fall', 'dates', 'a later chance has an earlier date')
    before = date ?? Infinity
  }
  return null
}

/**
 * Sets forecasts against their outcomes: for each life and span of readings the first forecast made.
 *
 * Several forecasts of one life say much the same, so one stands for a span. It is the first: which one is the last is known
 * only once the life is over, and the last before running out is one that ran out soon, whatever it had said. A forecast after
 * which nothing more was seen of the life, or made when its reserve was used up already, is left out.
 *
 * @source SRC-711 place of an outcome in its forecast (docs/sources.md)
 * @returns one for each life and span of readings, or what about a forecast cannot be used
 * @example judgeForecasts({ chances: [0.5], forecasts: [] }) // → { ok: true, judged: [] }
 */
export function judgeForecasts(input: {
  readonly chances: readonly number[]
  readonly forecasts: readonly ForecastWithOutcome[]
}): Outcome<{ readonly judged: readonly JudgedForecast[] }> {
  const { chances, forecasts } = input
  const middle = chances.indexOf(0.5)
  const firsts = new Map<string, ForecastWithOutcome>()
  for (const forecast of forecasts) {
    const key = JSON.stringify([forecast.life, spanOfReadings(forecast.readingsUsed)])
    const known = firsts.get(key)
    if (!known || forecast.countedFrom < known.countedFrom) firsts.set(key, forecast)
  }
  const judged: JudgedForecast[] = []
  for (const { life, group, readingsUsed, countedFrom, dates, straightLineAt, outcome } of firsts.values()) {
    const found = placeInForecast({ chances, dates, countedFrom, at: outcome.at })
    if (!found.ok) return found
    if (outcome.at <= countedFrom) continue
    const missOf = (date: Instant | null) => (date === null || !outcome.ranOut ? null : Math.abs(daysBetween(outcome.at, date)))
    judged.push({
      life,
      group,
      span: spanOfReadings(readingsUsed),
      place: found.place,
      ranOut: outcome.ranOut,
      middleMiss: missOf(dates[middle] ?? null),
      straightLineMiss: missOf(straightLineAt),
    })
  }
  return { ok: true, judged }
}
