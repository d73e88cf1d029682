import type { SettingValues } from '@glandkeeper/contract/settings'
import type { LeakGroup } from '@glandkeeper/engines/leak/interval'
import { type PriorFit, priorOfGroup } from '@glandkeeper/engines/wear/fit'
import { defaultPrior, type GroupPrior } from '@glandkeeper/engines/wear/prior'
import { startOfDayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { settingValuesOf } from '../settings/index.ts'

/** What a fit leaves: how fast glands wear and leak, by group and for the plant as a whole. */
export interface FitBody {
  readonly wear: PriorFit | null
  readonly leaks: { readonly groups: Readonly<Record<string, LeakGroup>>; readonly plant: LeakGroup | null }
}

/** Everything but the valve itself that a forecast starts from. The same basis gives the same forecast. */
export interface ForecastBasis {
  readonly fitId: string | null
  readonly fit: FitBody | null
  /** The next chance to repack: forecasts say how likely the travel is used up before it. */
  readonly stopAt: Date
  readonly settings: SettingValues
}

const MILLISECONDS_PER_DAY = 86_400_000

/** The basis as it is now: the newest fit, the settings, the next stop. */
export async function forecastBasis(read: Pick<Read, 'site' | 'wearFit'>, siteId: string, now: Date): Promise<ForecastBasis> {
  const newest = await read.wearFit.findFirst({
    where: { siteId },
    orderBy: [{ fittedAt: 'desc' }, { id: 'desc' }],
    select: { id: true },
  })
  return basisWith(read, siteId, newest?.id ?? null, now)
}

/** The basis a kept forecast was made from, to make it again. */
export async function basisOfKept(
  read: Pick<Read, 'site' | 'wearFit'>,
  siteId: string,
  kept: { readonly fitId: string | null; readonly stopAt: Date | null },
  now: Date,
): Promise<ForecastBasis> {
  const present = await basisWith(read, siteId, kept.fitId, now)
  return { ...present, stopAt: kept.stopAt ?? present.stopAt }
}

async function basisWith(
  read: Pick<Read, 'site' | 'wearFit'>,
  siteId: string,
  fitId: string | null,
  now: Date,
): Promise<ForecastBasis> {
  const site = await read.site.findUniqueOrThrow({
    where: { id: siteId },
    select: { nextStopOn: true, timeZone: true, settings: true },
  })
  const settings = settingValuesOf(site.settings)
  return { fitId, fit: fitId === null ? null : await fitBody(read, fitId), stopAt: stopAfter(now, site, settings), settings }
}

/** Service and packing make valves alike; where nobody knows the packing, the service alone. */
export function groupOf(service: string, family: string | null): string {
  return `${service} · ${family ?? 'packing not known'}`
}

export function priorOf({ fit }: ForecastBasis, group: string): GroupPrior {
  return fit?.wear ? priorOfGroup(fit.wear, group) : defaultPrior
}

/** The leak rates of a group, or of the plant where the group was never watched; null before any fit. */
export function leakGroupOf({ fit }: ForecastBasis, group: string): LeakGroup | null {
  const groups = fit?.leaks.groups ?? {}
  return (Object.hasOwn(groups, group) ? groups[group] : undefined) ?? fit?.leaks.plant ?? null
}

/** Parsing a fit costs more than using it, and every entry uses the newest. */
const parsed = new Map<string, FitBody>()
const MOST_PARSED = 4

async function fitBody(read: Pick<Read, 'wearFit'>, id: string): Promise<FitBody | null> {
  const known = parsed.get(id)
  if (known) return known
  const row = await read.wearFit.findUnique({ where: { id }, select: { body: true } })
  if (!row) return null
  const body = JSON.parse(row.body) as FitBody
  if (parsed.size >= MOST_PARSED) parsed.delete(parsed.keys().next().value ?? '')
  parsed.set(id, body)
  return body
}

/** The first moment of the planned stop; where none is planned or it is over, so many days from today. */
export function stopAfter(now: Date, site: { nextStopOn: string | null; timeZone: string }, settings: SettingValues): Date {
  const planned = site.nextStopOn === null ? null : startOfDayAt(site.nextStopOn, site.timeZone)
  if (planned !== null && planned > now) return planned
  const today = Math.floor(now.getTime() / MILLISECONDS_PER_DAY) * MILLISECONDS_PER_DAY
  return new Date(today + settings.stopHorizon * MILLISECONDS_PER_DAY)
}
