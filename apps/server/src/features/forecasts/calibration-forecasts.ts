import { setImmediate as nextTurn } from 'node:timers/promises'
import { movesFollower } from '@glandkeeper/engines/reserve/facts'
import type { Moment } from '@glandkeeper/engines/reserve/gland-history'
import { wearLives, type WearLife } from '@glandkeeper/engines/reserve/wear-lives'
import { type ForecastWithOutcome, type LifeOutcome, outcomeOfLife } from '@glandkeeper/engines/wear/calibration-place'
import { replayLife } from '@glandkeeper/engines/wear/calibration-replay'
import type { LifeRecord } from '@glandkeeper/engines/wear/life'
import { type Instant, instant, type Millimetre, mm, ratio } from '@glandkeeper/units/quantity'
import type { ForecastsOf } from '@glandkeeper/contract/calibration'
import type { Read } from '../../platform/store.ts'
import { FORECAST_CHANCES, type ForecastBasis, glandCourse, groupOf, priorOf } from '../glands/index.ts'

/**
 * What a forecast is judged on. Said ones spoke of no travel left. Few glands are let run to that, and which ones are
 * is no chance, so replayed ones speak of the level at which a valve comes to stand at watch.
 */
export function levelJudged(of: ForecastsOf, { settings }: ForecastBasis): Millimetre {
  return of === 'said' ? mm(0) : settings.watchReserve
}

export interface ForecastsOfSite {
  readonly forecasts: readonly ForecastWithOutcome[]
  readonly valves: number
  /** Fewer than there are where they have more lives than are looked at. */
  readonly valvesLookedAt: number
}

type Reader = Pick<Read, 'valve' | 'event' | 'forecastMade'>
type Ask = {
  readonly siteId: string
  readonly basis: ForecastBasis
  readonly shouldStop: () => boolean
  readonly mostLives: number
}

const PAGE = 1000
const FOR_COURSE = { id: true, kind: true, body: true, takenAt: true } as const
const CHANCES = FORECAST_CHANCES.map((chance) => ratio(chance))

/** Forecasts of a site with what became of them, valve by valve: other requests are let through between two lives. */
export async function forecastsOfSite(read: Reader, of: ForecastsOf, ask: Ask): Promise<ForecastsOfSite> {
  const valveIds = await (of === 'said' ? valvesWithForecasts(read, ask.siteId) : allValves(read, ask.siteId))
  const forecasts: ForecastWithOutcome[] = []
  let lives = 0
  let valvesLookedAt = 0
  for (const valveId of spread(valveIds)) {
    if (lives >= ask.mostLives || ask.shouldStop()) break
    const own = await (of === 'said' ? saidOf(read, valveId, ask) : replayedOf(read, valveId, ask))
    forecasts.push(...own)
    lives += new Set(own.map(({ life }) => life)).size
    valvesLookedAt += 1
    await nextTurn()
  }
  return { forecasts, valves: valveIds.length, valvesLookedAt }
}

/** Retired valves too: leaving them out would leave out the short lives. */
async function allValves(read: Reader, siteId: string): Promise<string[]> {
  return inPages((after) =>
    read.valve.findMany({ where: { siteId, id: { gt: after } }, orderBy: { id: 'asc' }, take: PAGE, select: { id: true } }),
  )
}

async function valvesWithForecasts(read: Reader, siteId: string): Promise<string[]> {
  return inPages(async (after) => {
    const where = { siteId, valveId: { gt: after } }
    const found = await read.forecastMade.groupBy({ by: ['valveId'], where, orderBy: { valveId: 'asc' }, take: PAGE })
    return found.map(({ valveId }) => ({ id: valveId }))
  })
}

async function inPages(page: (after: string) => Promise<{ id: string }[]>): Promise<string[]> {
  const ids: string[] = []
  for (;;) {
    const found = await page(ids.at(-1) ?? '')
    ids.push(...found.map(({ id }) => id))
    if (found.length < PAGE) return ids
  }
}

/** Each once, so that the first ones of the order are spread over all of them. The same order every time. */
function* spread(ids: readonly string[]): Generator<string> {
  let step = Math.max(Math.round(ids.length * 0.618), 1)
  while (commonDivisor(step, ids.length) > 1) step += 1
  for (let count = 0, place = 0; count < ids.length; count += 1, place = (place + step) % ids.length) yield ids[place]!
}

function commonDivisor(one: number, other: number): number {
  return other === 0 ? one : commonDivisor(other, one % other)
}

async function replayedOf(read: Reader, valveId: string, { siteId, basis }: Ask): Promise<ForecastWithOutcome[]> {
  const level = levelJudged('replayed', basis)
  const { service, lives } = await livesOf(read, { siteId, valveId, level })
  const forecasts: ForecastWithOutcome[] = []
  for (const [index, { life, outcome }] of lives.entries()) {
    if (outcome === null) continue
    const group = groupOf(service, life.family)
    const own = replayLife({
      life: above(level, life.record),
      prior: priorOf(basis, group),
      earlierLives: lives.slice(0, index).map((earlier) => earlier.life.record),
      chances: CHANCES,
      name: `${valveId} ${index}`,
      group,
      outcome,
    })
    forecasts.push(...own)
    await nextTurn()
  }
  return forecasts
}

async function saidOf(read: Reader, valveId: string, { siteId }: Ask): Promise<ForecastWithOutcome[]> {
  const { lives } = await livesOf(read, { siteId, valveId, level: mm(0) })
  const rows = await read.forecastMade.findMany({ where: { siteId, valveId }, orderBy: [{ countedFrom: 'asc' }, { id: 'asc' }] })
  return rows.flatMap((row) => {
    const countedFrom = instant(row.countedFrom.getTime())
    const index = lifeSpokenOf(lives, row.eventId, countedFrom)
    const outcome = lives[index]?.outcome
    if (!outcome) return []
    const dates = JSON.parse(row.dates) as (Instant | null)[]
    const straightLineAt = row.straightLineAt && instant(row.straightLineAt.getTime())
    const { groupName: group, readingsUsed } = row
    return [{ life: `${valveId} ${index}`, group, readingsUsed, countedFrom, dates, straightLineAt, outcome }]
  })
}

/** The life that was on at the moment a forecast counts from; of two that meet there the one its own entry belongs to. */
function lifeSpokenOf(lives: readonly LifeSeen[], eventId: string, countedFrom: Instant): number {
  const own = lives.findIndex(({ moments }) => moments.some(({ factId, at }) => factId === eventId && at === countedFrom))
  return own === -1 ? lives.findLastIndex(({ life }) => (life.from ?? -Infinity) <= countedFrom) : own
}

interface LifeSeen {
  readonly life: WearLife
  readonly moments: readonly Moment[]
  readonly outcome: LifeOutcome | null
}

/** The packing lives of a valve as its entries tell them now, corrections included. */
async function livesOf(
  read: Reader,
  { siteId, valveId, level }: { readonly siteId: string; readonly valveId: string; readonly level: Millimetre },
): Promise<{ service: string; lives: LifeSeen[] }> {
  const [valve, events] = await Promise.all([
    read.valve.findUniqueOrThrow({ where: { id: valveId } }),
    read.event.findMany({ where: { siteId, valveId }, select: FOR_COURSE }),
  ])
  const { gland, history } = glandCourse(valve, events)
  const cut = momentsOfLives(history.moments)
  const lives = wearLives(gland, history).map((life, index): LifeSeen => {
    const moments = cut[index] ?? []
    return { life, moments, outcome: outcomeOfLife(levelsOf(moments, level)) }
  })
  return { service: valve.service, lives }
}

/** By the order of entries and not by their times: a reading and the repack after it may bear one time. */
function momentsOfLives(moments: readonly Moment[]): Moment[][] {
  const lives: Moment[][] = []
  for (const moment of moments) {
    if (lives.length === 0 || moment.kind === 'packing.renewed' || moment.kind === 'ring.added') lives.push([])
    lives.at(-1)?.push(moment)
  }
  return lives
}

/** What was read, and what turns say between readings. A look that measured nothing does not make a life watched longer. */
function levelsOf(moments: readonly Moment[], level: Millimetre): { at: Instant; reserve: number }[] {
  return moments.flatMap(({ kind, at, reserve }) =>
    reserve === null || !movesFollower(kind) ? [] : [{ at, reserve: reserve - level }],
  )
}

/** The same life with its reserve counted from another level than none. */
function above(level: Millimetre, life: LifeRecord): LifeRecord {
  return { ...life, readings: life.readings.map(({ at, reserve }) => ({ at, reserve: mm(reserve - level) })) }
}
