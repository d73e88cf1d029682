import { chanceByDates } from '@glandkeeper/engines/wear/chance-by-dates'
import { daysBetween, type Instant, instant } from '@glandkeeper/units/quantity'
import type { ValveStateModel } from '../../generated/sqlite/models.ts'
import { FORECAST_CHANCES, type KeptForecast, type KeptLook } from '../glands/index.ts'

export type OutlookState = Pick<ValveStateModel, 'reserveMm' | 'forecast' | 'nextLook' | 'lastSeenAt' | 'packedAt'>

/** What may become of a gland by any day, from what is kept of it. */
export interface ValveOutlook {
  /** Chance that its travel is used up before a moment. */
  readonly chanceBefore: (moment: Instant) => number
  /** On average over like valves. */
  readonly leaksPerDay: number
  /** Share of the packing's life that is used up by a moment; 1 and more when nothing is thrown away. */
  readonly lifeUsedAt: (moment: Instant) => number
}

const MIDDLE = FORECAST_CHANCES.indexOf(0.5)
/** Beyond twenty years nobody counts on. */
const LONGEST_DAYS = 20 * 365.25

/** @param leakTarget chance of an unseen leak that the leak interval was worked out for */
export function valveOutlook(state: OutlookState, now: Date, leakTarget: number): ValveOutlook {
  const leaksPerDay = leakRate(state, leakTarget)
  const forecast = state.forecast === null ? null : (JSON.parse(state.forecast) as KeptForecast)
  if (forecast === null || (state.reserveMm !== null && state.reserveMm <= 0))
    return { chanceBefore: () => (state.reserveMm === null ? 0 : 1), leaksPerDay, lifeUsedAt: () => 1 }
  const countedFrom = instant(forecast.countedFrom)
  const dates = FORECAST_CHANCES.map((chance, index) => {
    const at = forecast.dates[index] ?? null
    return { chance, at: at === null ? null : instant(at) }
  })
  const by = chanceByDates({ countedFrom, dates })
  const middle = forecast.dates[MIDDLE] ?? null
  const packed = instant((state.packedAt ?? new Date(Math.min(forecast.countedFrom, now.getTime()))).getTime())
  const lifeDays = middle === null ? LONGEST_DAYS : Math.max(1, daysBetween(packed, instant(Math.max(middle, now.getTime()))))
  return {
    chanceBefore: by,
    leaksPerDay,
    lifeUsedAt: (moment) => Math.max(0, daysBetween(packed, moment) / lifeDays),
  }
}

/** The leak interval turned around: leaks in a day when a leak begins unseen within the interval with the target's chance. */
function leakRate({ nextLook, lastSeenAt }: OutlookState, target: number): number {
  if (nextLook === null || lastSeenAt === null) return 0
  const at = (JSON.parse(nextLook) as KeptLook).weighed.find(({ rule }) => rule === 'leak interval')?.at
  const days = at === undefined ? 0 : daysBetween(instant(lastSeenAt.getTime()), instant(at))
  return days > 0 ? -Math.log1p(-target) / days : 0
}
