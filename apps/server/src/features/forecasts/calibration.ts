import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Calibration, CalibrationRow, ForecastsOf, showCalibration } from '@glandkeeper/contract/calibration'
import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { Outcome } from '@glandkeeper/engines/outcome'
import { calibrationCurve, calibrationOf } from '@glandkeeper/engines/wear/calibration'
import { type JudgedForecast, judgeForecasts, readingSpans } from '@glandkeeper/engines/wear/calibration-place'
import { Refusal } from '../../platform/problem.ts'
import type { Store } from '../../platform/store.ts'
import { FORECAST_CHANCES, forecastBasis } from '../glands/index.ts'
import { forecastsOfSite, levelJudged } from './calibration-forecasts.ts'

type Shown = OkIn<typeof showCalibration>

/** More lives tell a share no better than anybody needs, and each costs time. */
const MOST_LIVES = 5000

/** How the forecasts of a site turned out. Kept until the site has another fit, an entry or a changed register. */
export class Calibrations {
  readonly #store: Store
  readonly #mostLives: number
  /** The newest of each site and kind; a promise, so that two who ask at once wait for one. */
  readonly #kept = new Map<string, { readonly rests: string; readonly shown: Promise<Shown> }>()
  #isClosing = false

  constructor(store: Store, mostLives = MOST_LIVES) {
    this.#store = store
    this.#mostLives = mostLives
  }

  async of(siteId: string, of: ForecastsOf, now: Date): Promise<Shown> {
    const rests = await this.#restsOn(siteId)
    const key = `${of} ${siteId}`
    const kept = this.#kept.get(key)
    if (kept?.rests === rests) return kept.shown
    const shown = this.#made(siteId, of, now)
    this.#kept.set(key, { rests, shown })
    shown.catch(() => this.#kept.delete(key))
    return shown
  }

  async close(): Promise<void> {
    this.#isClosing = true
    await Promise.allSettled([...this.#kept.values()].map(({ shown }) => shown))
  }

  async #restsOn(siteId: string): Promise<string> {
    const { read } = this.#store
    const [site, fit, changes] = await Promise.all([
      read.site.findUniqueOrThrow({ where: { id: siteId }, select: { chainLength: true } }),
      read.wearFit.findFirst({ where: { siteId }, orderBy: [{ fittedAt: 'desc' }, { id: 'desc' }], select: { id: true } }),
      read.registerChange.count({ where: { siteId } }),
    ])
    return `${site.chainLength} ${fit?.id ?? 'no fit'} ${changes}`
  }

  async #made(siteId: string, of: ForecastsOf, now: Date): Promise<Shown> {
    const { read } = this.#store
    const basis = await forecastBasis(read, siteId, now)
    const fit =
      basis.fitId === null ? null : await read.wearFit.findUnique({ where: { id: basis.fitId }, select: { fittedAt: true } })
    const shouldStop = () => this.#isClosing
    const { forecasts, ...valves } = await forecastsOfSite(read, of, { siteId, basis, shouldStop, mostLives: this.#mostLives })
    if (this.#isClosing) throw new Refusal('store/busy', 'the server is closing')
    const { judged } = expected(judgeForecasts({ chances: FORECAST_CHANCES, forecasts }))
    const shown = {
      of,
      level: levelJudged(of, basis),
      fittedAt: fit?.fittedAt.toISOString() ?? null,
      ...valves,
      overall: await rowOf('all forecasts', judged),
      byReadings: await rowsOf([...readingSpans], judged, ({ span }) => span),
      byGroup: await rowsOf(groupsIn(judged), judged, ({ group }) => group),
      curve: expected(calibrationCurve({ judged, chances: FORECAST_CHANCES })).points,
    }
    return shown as unknown as Calibration
  }
}

function groupsIn(judged: readonly JudgedForecast[]): string[] {
  return [...new Set(judged.map(({ group }) => group))].toSorted()
}

async function rowsOf(
  names: readonly string[],
  judged: readonly JudgedForecast[],
  nameOf: (one: JudgedForecast) => string,
): Promise<CalibrationRow[]> {
  const rows: CalibrationRow[] = []
  for (const name of names)
    rows.push(
      await rowOf(
        name,
        judged.filter((one) => nameOf(one) === name),
      ),
    )
  return rows
}

async function rowOf(name: string, judged: readonly JudgedForecast[]): Promise<CalibrationRow> {
  await nextTurn()
  const { ok: _, ...row } = expected(calibrationOf(judged))
  return { name, ...row } as unknown as CalibrationRow
}

/** Kept forecasts and replayed ones are ours: one that cannot be read is a fault of the server. */
function expected<T extends object>(outcome: Outcome<T>): T & { ok: true } {
  if (!outcome.ok) throw new Error(`${outcome.problem.code}: ${outcome.problem.detail}`)
  return outcome
}
