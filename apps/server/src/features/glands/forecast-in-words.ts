import type { NextLook, ReserveForecast } from '@glandkeeper/contract/reserve'
import type { ForecastReason } from '@glandkeeper/engines/wear/forecast'
import { formatChance } from '@glandkeeper/units/format'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import { dayAt } from '../../platform/clock.ts'
import { FORECAST_CHANCES, type ForecastMoment, type KeptForecast, type KeptLook } from './forecast-of-gland.ts'

const sentences: Readonly<Record<ForecastReason, string>> = {
  'forecast/one-reading': 'one reading so far: the date leans on like valves',
  'forecast/few-readings': 'few readings so far: the date leans partly on like valves',
  'forecast/one-day': 'all readings are of one day: the date leans on like valves',
  'forecast/not-falling': 'the readings do not fall: the date leans on like valves',
  'forecast/repack-date-unknown': 'nobody knows when it was packed: bed-in is taken to be over',
  'forecast/readings-left-out': 'readings far off the others were left out',
  'forecast/nips-since-last-reading': 'taken up since the gap was last read: read it',
  'forecast/earlier-lives-used': 'earlier packings of this valve were taken into account',
  'forecast/prior-set-by-us': 'nothing was learned from this plant yet: the date leans on values set by us',
  'forecast/used-up': 'the travel may be used up already',
  'forecast/beyond-20-years': 'part of the interval lies beyond twenty years',
}

type Chance = (typeof FORECAST_CHANCES)[number]

/** The day by which the travel is used up with a chance; null beyond twenty years. */
export function dayOfChance(kept: Pick<KeptForecast, 'dates'>, chance: Chance, timeZone: string): string | null {
  const moment: ForecastMoment = kept.dates[FORECAST_CHANCES.indexOf(chance)] ?? null
  return moment === null ? null : dayAt(moment, timeZone)
}

/** A kept forecast in the terms of the contract: days of the site. */
export function presentForecast(kept: KeptForecast, stopAt: Date, timeZone: string): ReserveForecast {
  const dayOf = (chance: Chance) => dayOfChance(kept, chance, timeZone)
  return {
    countedFrom: new Date(kept.countedFrom).toISOString(),
    level: kept.level as ReserveForecast['level'],
    levelDeviation: kept.levelDeviation as ReserveForecast['levelDeviation'],
    earliest: dayOf(0.025),
    early: dayOf(0.1),
    middle: dayOf(0.5),
    late: dayOf(0.9),
    latest: dayOf(0.975),
    chanceBeforeStop: kept.chanceBeforeStop as ReserveForecast['chanceBeforeStop'],
    stopOn: dayAt(stopAt, timeZone),
    readingsUsed: kept.readingsUsed,
    earlierLivesUsed: kept.earlierLivesUsed,
    leftOut: kept.leftOut.map(({ at, reserve, why }) => ({
      at: new Date(at).toISOString(),
      reserve: reserve as ReserveForecast['level'],
      why,
    })),
    group: kept.group,
    origin: kept.origin,
    says: kept.reasons.map((reason) => sentences[reason]),
  }
}

const because: Readonly<Record<KeptLook['rule'], string>> = {
  'after a repack': 'it was packed and nobody has looked since: re-tighten and look',
  'after a nip': 'it was taken up and nobody has looked since',
  'leak interval': 'by then a leak may have begun unseen with the chance the site allows, on average over like valves',
  reserve: 'by then the travel may be used up with the chance the site allows',
  'longest time between looks': 'the longest time between looks for its criticality',
  'never seen': 'nobody has looked at it yet',
}

export function presentLook(kept: KeptLook, timeZone: string): NextLook {
  return {
    on: dayAt(kept.at, timeZone),
    rule: kept.rule,
    because: because[kept.rule],
    weighed: kept.weighed.map(({ rule, at }) => ({ rule, on: dayAt(at, timeZone) })),
  }
}

/** `used up between 3 Mar and 20 Aug 2027 four times in five`, and the chance before the stop. */
export function forecastSentence({ early, late, chanceBeforeStop, stopOn }: ReserveForecast): string {
  const day = (iso: string, pattern = 'd MMM yyyy') => format(parseISO(iso), pattern)
  const between =
    early === null
      ? 'it lasts beyond twenty years'
      : late === null
        ? `nine times in ten used up after ${day(early)}`
        : `four times in five used up between ${day(early, early.slice(0, 4) === late.slice(0, 4) ? 'd MMM' : 'd MMM yyyy')} and ${day(late)}`
  return `${between}; ${formatChance(chanceBeforeStop)} before ${day(stopOn)}`
}
