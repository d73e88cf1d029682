import {
  addDays,
  type Day,
  days,
  daysBetween,
  type Instant,
  type Millimetre,
  mm,
  type Quantity,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { priorOfLife, seenInEarlierLives } from './earlier-lives.ts'
import { afterNips, type Filtered, filterLife } from './filter.ts'
import { type LifeRecord, seriesOf } from './life.ts'
import { posteriorOfRate, rateMoments, type RatePosterior } from './posterior.ts'
import { bedInShare, type GroupPrior, unusableIn } from './prior.ts'
import { chanceOfRunningOut, daysUntilChance } from './run-out.ts'
import { type LeftOut, type Screened, screened } from './screening.ts'

export type MillimetrePerDay = Quantity<'mm/d'>

/** When the reserve is used up, with one chance. */
export type RunOutDate =
  | { readonly state: 'used up' }
  | { readonly state: 'on a date'; readonly days: Day; readonly at: Instant }
  | { readonly state: 'beyond 20 years' }

/** What a person should know who reads the date. */
export type ForecastReason =
  | 'forecast/one-reading'
  | 'forecast/few-readings'
  | 'forecast/one-day'
  | 'forecast/not-falling'
  | 'forecast/repack-date-unknown'
  | 'forecast/readings-left-out'
  | 'forecast/nips-since-last-reading'
  | 'forecast/earlier-lives-used'
  | 'forecast/prior-set-by-us'
  | 'forecast/used-up'
  | 'forecast/beyond-20-years'

export interface ForecastInput {
  readonly life: LifeRecord
  readonly prior: GroupPrior
  /** Finished lives of the same valve, in any order. */
  readonly earlierLives: readonly LifeRecord[]
  /** Chances to give a date for, each between 0 and 1. */
  readonly chances: readonly Ratio[]
  /** Moments to give a chance for. */
  readonly before: readonly Instant[]
}

export interface ReserveForecast {
  /** The last reading used, or the last nip after it: days are counted from here. */
  readonly countedFrom: Instant
  readonly dates: readonly { readonly chance: Ratio; readonly runsOut: RunOutDate }[]
  readonly chances: readonly { readonly before: Instant; readonly chance: Ratio }[]
  /** The smooth level at countedFrom; the follower itself stands within half a step of it. */
  readonly level: { readonly reserve: Millimetre; readonly deviation: Millimetre }
  readonly rate: { readonly perDay: MillimetrePerDay; readonly deviation: MillimetrePerDay }
  readonly readingsUsed: number
  readonly earlierLivesUsed: number
  readonly leftOut: readonly LeftOut[]
  readonly reasons: readonly ForecastReason[]
}

const FEW_READINGS = 4

/**
 * When the reserve of a packed gland is used up: dates with their chance, and chances with their date.
 *
 * Wear with chance and reading error, a rate of its own for each life, known beforehand as far as like valves tell, and
 * bed-in after the repack. Holds for a follower that is taken up on demand, as before. It does not know of a change of
 * duty to come, of a leak that taking up no longer stops, or of somebody who will repack early.
 *
 * @source SRC-700 the wear model · SRC-708 how it was tried (docs/sources.md)
 * @returns dates and chances with reasons; a life without a reading is `forecast/no-reading`
 * @example forecastReserve({ life: { readings: [], nips: [], repackedAt: null, step: mm(0.875) }, prior: defaultPrior, earlierLives: [], chances: [], before: [] }).ok // → false
 */
export function forecastReserve(input: ForecastInput): Outcome<ReserveForecast> {
  const fault = faultOf(input)
  if (fault) return fault
  const known = knownOf(input)
  if (!known.ok) return known
  const { filtered, posterior, countedFrom } = known
  const { wear } = input.prior
  const chanceWithin = chanceOfRunningOut({ wear, filtered, posterior, stepVariance: input.life.step ** 2 / 12 })
  const rate = rateMoments(posterior)
  const level = filtered.levelAtNoWear + filtered.levelByRate * rate.mean - wear.bedInFall * bedInShare(wear, filtered.age)
  const levelDeviation = Math.sqrt(filtered.levelVariance + filtered.levelByRate ** 2 * rate.variance)
  const daysUntil = daysUntilChance(chanceWithin, {
    days: level / rate.mean,
    logDeviation: Math.hypot(levelDeviation / level, Math.sqrt(rate.variance) / rate.mean),
  })
  const dates = input.chances.map((chance) => ({ chance, runsOut: runOutDate(daysUntil(chance), countedFrom) }))
  const chances = input.before.map((before) => ({
    before,
    chance: ratio(chanceWithin(Math.max(0, daysBetween(countedFrom, before)))),
  }))
  const figures = {
    level,
    levelDeviation,
    rate: rate.mean,
    rateDeviation: Math.sqrt(rate.variance),
  }
  if (!Object.values(figures).every(Number.isFinite))
    return refuse('number/out-of-range', 'life', 'the readings lie too far apart to be computed with')
  return {
    ok: true,
    countedFrom,
    dates,
    chances,
    level: { reserve: mm(figures.level), deviation: mm(figures.levelDeviation) },
    rate: { perDay: figures.rate as MillimetrePerDay, deviation: figures.rateDeviation as MillimetrePerDay },
    readingsUsed: known.kept.times.length,
    earlierLivesUsed: known.earlierLives,
    leftOut: known.kept.leftOut,
    reasons: reasonsOf(input, known, dates),
  }
}

interface Known {
  readonly kept: Screened
  readonly filtered: Filtered
  readonly posterior: RatePosterior
  readonly countedFrom: Instant
  readonly hasNipsSince: boolean
  readonly earlierLives: number
}

/** Everything the record says, up to the last reading or the last nip after it. */
export function knownOf(input: Pick<ForecastInput, 'life' | 'prior' | 'earlierLives'>): Outcome<Known> {
  const { life, prior, earlierLives } = input
  const series = seriesOf(life)
  if (!series.ok) return series
  const kept = screened(prior.wear, series)
  const last = kept.times.at(-1)
  if (last === undefined) return refuse('forecast/no-reading', 'life', 'no reading of the reserve since the repack')
  const { ages, reserves } = kept
  const read = filterLife(prior.wear, { ages, reserves, from: 0, count: ages.length })
  const since = life.nips.filter((nip) => nip.at > last)
  const countedFrom = since.reduce((latest, nip) => (nip.at > latest ? nip.at : latest), last)
  const filtered =
    since.length === 0
      ? read
      : afterNips(prior.wear, read, {
          age: read.age + daysBetween(last, countedFrom),
          travels: since.map((nip) => nip.travel),
          step: life.step,
        })
  const ratePrior = priorOfLife(prior, earlierLives.length === 0 ? [] : seenInEarlierLives(prior, earlierLives))
  const posterior = posteriorOfRate(filtered, ratePrior)
  return { ok: true, kept, filtered, posterior, countedFrom, hasNipsSince: since.length > 0, earlierLives: ratePrior.lives }
}

function faultOf({ prior, chances, before }: ForecastInput): ReturnType<typeof refuse> | null {
  const unusable = unusableIn(prior)
  if (unusable) return refuse('forecast/unusable-prior', 'prior', `${unusable} of the prior is out of range`)
  const impossible = chances.find((chance) => !(chance > 0 && chance < 1))
  if (impossible !== undefined)
    return refuse('forecast/impossible-chance', 'chances', `a chance must be above 0 and below 1, not ${impossible}`)
  const noMoment = before.find((at) => !(Math.abs(at) < Infinity))
  return noMoment === undefined ? null : refuse('number/out-of-range', 'before', 'a moment asked about is not a date')
}

function runOutDate(daysAhead: number, countedFrom: Instant): RunOutDate {
  if (daysAhead === 0) return { state: 'used up' }
  if (daysAhead === Infinity) return { state: 'beyond 20 years' }
  return { state: 'on a date', days: days(daysAhead), at: addDays(countedFrom, days(daysAhead)) }
}

function reasonsOf(input: ForecastInput, known: Known, dates: ReserveForecast['dates']): ForecastReason[] {
  const { times, leftOut } = known.kept
  const hasDate = (state: RunOutDate['state']) => dates.some(({ runsOut }) => runsOut.state === state)
  const isOneDay = times.length > 1 && daysBetween(times[0]!, times.at(-1)!) < 1
  const holds: readonly (readonly [ForecastReason, boolean])[] = [
    ['forecast/one-reading', times.length === 1],
    ['forecast/few-readings', times.length > 1 && times.length < FEW_READINGS],
    ['forecast/one-day', isOneDay],
    ['forecast/not-falling', times.length > 1 && !isOneDay && known.filtered.pull <= 0],
    ['forecast/repack-date-unknown', input.life.repackedAt === null],
    ['forecast/readings-left-out', leftOut.length > 0],
    ['forecast/nips-since-last-reading', known.hasNipsSince],
    ['forecast/earlier-lives-used', known.earlierLives > 0],
    ['forecast/prior-set-by-us', input.prior.origin === 'set by us'],
    ['forecast/used-up', hasDate('used up')],
    ['forecast/beyond-20-years', hasDate('beyond 20 years')],
  ]
  return holds.filter(([, isSo]) => isSo).map(([reason]) => reason)
}
