import { intervalBetweenVisits } from '@glandkeeper/engines/leak/interval'
import { visitsOf } from '@glandkeeper/engines/leak/visits'
import { type StandingFact, wasAtValve } from '@glandkeeper/engines/reserve/facts'
import type { GlandHistory } from '@glandkeeper/engines/reserve/gland-history'
import { wearLives, type WearLife } from '@glandkeeper/engines/reserve/wear-lives'
import { type LookRule, nextLook } from '@glandkeeper/engines/schedule/next-look'
import { forecastReserve, type ForecastReason, type RunOutDate } from '@glandkeeper/engines/wear/forecast'
import { days, type Day, type Instant, instant, ratio } from '@glandkeeper/units/quantity'
import type { Gland } from '@glandkeeper/engines/gland/gland'
import type { ValveModel } from '../../generated/sqlite/models.ts'
import { type ForecastBasis, groupOf, leakGroupOf, priorOf } from './forecast-basis.ts'

/** The chances a forecast gives dates for: 95 and 80 % intervals, the middle, and steps between for judging it later. */
export const FORECAST_CHANCES = [0.025, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.975] as const

/** A date of the forecast, in milliseconds; null is beyond twenty years. */
export type ForecastMoment = number | null

/** A forecast as it is kept: plain, and the same for the same entries and basis. */
export interface KeptForecast {
  readonly group: string
  readonly origin: 'set by us' | 'fitted to the plant' | 'fitted to the group'
  readonly countedFrom: number
  /** One for each of FORECAST_CHANCES. */
  readonly dates: readonly ForecastMoment[]
  readonly chanceBeforeStop: number
  readonly level: number
  readonly levelDeviation: number
  readonly ratePerDay: number
  readonly readingsUsed: number
  readonly earlierLivesUsed: number
  readonly leftOut: readonly { readonly at: number; readonly reserve: number; readonly why: string }[]
  readonly reasons: readonly ForecastReason[]
}

export interface KeptLook {
  readonly at: number
  readonly rule: LookRule
  readonly weighed: readonly { readonly rule: LookRule; readonly at: number }[]
}

export interface GlandForecast {
  readonly lives: readonly WearLife[]
  readonly forecast: KeptForecast | null
  readonly look: KeptLook | null
}

type Valve = Pick<ValveModel, 'service' | 'criticality' | 'createdAt'>

/** What a gland's entries say of its future, from what like glands have shown. */
export function forecastOfGland(
  valve: Valve,
  gland: Gland,
  { history, standing }: { readonly history: GlandHistory; readonly standing: readonly StandingFact[] },
  basis: ForecastBasis,
): GlandForecast {
  const lives = wearLives(gland, history)
  const forecast = keptForecast(valve, lives, basis)
  return { lives, forecast, look: lookAt(valve, { history, standing, forecast }, basis) }
}

function keptForecast(valve: Valve, lives: readonly WearLife[], basis: ForecastBasis): KeptForecast | null {
  const present = lives.at(-1)
  if (!present) return null
  const group = groupOf(valve.service, present.family)
  const prior = priorOf(basis, group)
  const found = forecastReserve({
    life: present.record,
    prior,
    earlierLives: lives.slice(0, -1).map(({ record }) => record),
    chances: FORECAST_CHANCES.map((chance) => ratio(chance)),
    before: [instant(basis.stopAt.getTime())],
  })
  if (!found.ok) return null
  return {
    group,
    origin: prior.origin,
    countedFrom: found.countedFrom,
    dates: found.dates.map(({ runsOut }) => momentOf(runsOut, found.countedFrom)),
    chanceBeforeStop: found.chances[0]?.chance ?? 0,
    level: found.level.reserve,
    levelDeviation: found.level.deviation,
    ratePerDay: found.rate.perDay,
    readingsUsed: found.readingsUsed,
    earlierLivesUsed: found.earlierLivesUsed,
    leftOut: found.leftOut.map(({ at, reserve, why }) => ({ at, reserve, why })),
    reasons: found.reasons,
  }
}

function momentOf(runsOut: RunOutDate, countedFrom: Instant): ForecastMoment {
  switch (runsOut.state) {
    case 'used up':
      return countedFrom
    case 'on a date':
      return Math.round(runsOut.at)
    case 'beyond 20 years':
      return null
  }
}

function lookAt(
  valve: Valve,
  known: { readonly history: GlandHistory; readonly standing: readonly StandingFact[]; readonly forecast: KeptForecast | null },
  basis: ForecastBasis,
): KeptLook | null {
  const { settings } = basis
  const { moments } = known.history
  const seen = moments.filter(({ kind }) => wasAtValve(kind))
  const last = seen.at(-1)
  const found = nextLook({
    lastSeenAt: last?.at ?? null,
    knownSince: instant(valve.createdAt.getTime()),
    repackToFollow: last?.kind === 'packing.renewed' || last?.kind === 'ring.added' ? last.at : null,
    nipToFollow: last?.kind === 'gland.nipped' ? last.at : null,
    leakInterval: leakInterval(valve, known, basis),
    reserveReachedAt: reserveReachedAt(known.forecast, settings.reserveLookChance),
    rules: {
      afterRepack: settings.retightenAfterRepack,
      afterNip: days(settings.lookAfterNip / 24),
      leastBetween: settings.leastBetweenLooks,
      mostBetween: { low: settings.mostBetweenLow, ordinary: settings.mostBetweenOrdinary, high: settings.mostBetweenHigh }[
        valve.criticality as 'low' | 'ordinary' | 'high'
      ],
    },
  })
  return found.ok
    ? { at: Math.round(found.at), rule: found.rule, weighed: found.weighed.map(({ rule, at }) => ({ rule, at: Math.round(at) })) }
    : null
}

function leakInterval(
  valve: Valve,
  { standing, history }: { standing: readonly StandingFact[]; history: GlandHistory },
  basis: ForecastBasis,
): Day | null {
  const { spans, ageAtLastLook } = visitsOf(standing)
  const group = leakGroupOf(basis, groupOf(valve.service, history.lives.at(-1)?.family ?? null))
  if (group === null || ageAtLastLook === null) return null
  const found = intervalBetweenVisits({ group, visits: spans, age: ageAtLastLook, target: basis.settings.leakTarget })
  return found.ok && found.interval > 0 ? found.interval : null
}

/** The date of the forecast whose chance is nearest under what the site allows. */
function reserveReachedAt(forecast: KeptForecast | null, allowed: number): Instant | null {
  if (forecast === null) return null
  const index = FORECAST_CHANCES.findLastIndex((chance) => chance <= allowed + 1e-9)
  const at = forecast.dates[Math.max(index, 0)] ?? null
  return at === null ? null : instant(at)
}
